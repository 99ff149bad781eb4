// A question as a person types it: words, figures and bounds, by the rules of `spokeshave find`.
// Takes "saddle slot 3/32" (a bare fraction is of an inch), "radius > 10 ft", "glue under 60 C", "2 to 3 mm" and
// "eleven sixty-fourths" (numbers.js).
(function (shop) {
  "use strict";

  var MARKS = "=.,;:?!()…\"'<>≤≥";
  var NUMBER = "(\\d+)\\s+(\\d+)/(\\d+)|(\\d+)-(\\d+)/(\\d+)|(\\d+)/(\\d+)|(-?\\d+(?:\\.\\d+)?|-?\\.\\d+)";
  var HAIR = 1 / 200; // how wide a fraction is taken, as a part of it
  var WIDE = 0.025; // how wide a decimal is taken at most, as a part of it

  // A number at the beginning of a text: its value, how it is written, and what is left.
  function number(text, units) {
    return digits(text) || shop.spelled(text, units.numbers, function (rest) {
      return unit(rest, units.said) !== null;
    });
  }

  function digits(text) {
    var met = new RegExp("^(?:" + NUMBER + ")(?![\\d/])").exec(text);
    if (!met) {
      return null;
    }
    var at = met[1] ? 1 : met[4] ? 4 : met[7] ? 6 : 0;
    var below = at ? Number(met[at + 2]) : 0;
    if (at && !below) {
      return null;
    }
    var whole = at === 6 || !at ? 0 : Number(met[at]);
    return {
      value: at ? whole + Number(met[at + 1]) / below : Number(met[9]),
      below: below,
      decimals: at ? 0 : (met[9].split(".")[1] || "").length,
      rest: text.slice(met[0].length)
    };
  }

  // The unit at the beginning of a text, in the longest form that fits.
  function unit(text, said) {
    var met = /^\s*-?\s*(?=\S)/.exec(text);
    var begun = text.slice(met ? met[0].length : 0).toLowerCase();
    for (var length = Math.min(begun.length, 40); length > 0; length -= 1) {
      var form = begun.slice(0, length);
      var next = begun[length] || "";
      var ends = !/[\p{L}\p{N}]/u.test(next) || !/[\p{L}\p{N}]/u.test(form[length - 1]);
      if (ends && Object.prototype.hasOwnProperty.call(said, form)) {
        return { name: said[form], rest: begun.slice(length) };
      }
    }
    return null;
  }

  function slack(one) {
    var size = Math.abs(one.value);
    return one.below ? size * HAIR : Math.min(0.5 / Math.pow(10, one.decimals), size * WIDE);
  }

  // What a figure covers, in the base unit of its kind.
  function span(first, last, name, units) {
    var line = units.lines[name];
    if (!line) {
      return null;
    }
    var middle = { value: (first.value + last.value) / 2, below: first.below || last.below, decimals: 0 };
    middle.decimals = Math.max(first.decimals, last.decimals);
    var room = slack(middle);
    var edges = [first.value - room, last.value + room].map(function (value) {
      return value * line[1] + line[2];
    });
    return { kind: line[0], low: Math.min.apply(null, edges), high: Math.max.apply(null, edges) };
  }

  function range(text, units) {
    var met = /^\s*(?:to|-|–)\s*/.exec(text);
    return met ? number(text.slice(met[0].length), units) : null;
  }

  // A figure at the beginning of a text, with its span and what is left; null where there is none with a unit.
  function figure(text, units) {
    var first = number(text, units);
    if (!first) {
      return null;
    }
    var last = range(first.rest, units) || first;
    var named = unit(last.rest, units.said);
    if (!named && (first.below || last.below)) {
      named = { name: "inch", rest: last.rest };
    }
    if (!named) {
      return null;
    }
    var inches = named.name === "foot" ? more(named.rest, units) : null;
    if (inches) {
      first = last = { value: first.value * 12 + inches.value, below: inches.below, decimals: inches.decimals };
      named = { name: "inch", rest: inches.rest };
    }
    var made = span(first, last, named.name, units);
    return made && { span: made, rest: named.rest };
  }

  // Inches behind feet: "1 ft 6 in".
  function more(text, units) {
    var inches = number(text.replace(/^\s+/, ""), units);
    var named = inches && unit(inches.rest, units.said);
    return named && named.name === "inch" ? Object.assign(inches, { rest: named.rest }) : null;
  }

  function bare(word) {
    while (word && MARKS.indexOf(word[0]) >= 0) {
      word = word.slice(1);
    }
    while (word && MARKS.indexOf(word[word.length - 1]) >= 0) {
      word = word.slice(0, -1);
    }
    return word;
  }

  // The question in a text: its words' stems, and its figures, each with its bound: at, above or below.
  shop.read = function (text, units) {
    var words = [];
    var figures = [];
    var rest = text.replace(/([<>≤≥=]+)/g, " $1 ").trim();
    while (rest) {
      var found = figure(rest, units);
      if (found) {
        var bound = units.bounds[(words[words.length - 1] || "").toLowerCase()];
        if (bound) {
          words.pop();
        }
        figures.push({ bound: bound || "at", span: found.span });
        rest = found.rest.trim();
      } else {
        var word = /^\S+\s*/.exec(rest)[0];
        words.push(word.trim());
        rest = rest.slice(word.length);
      }
    }
    var kept = words.map(bare).filter(Boolean);
    return { words: shop.stemsIn(kept.join(" ")), figures: figures };
  };
})((window.shopSearch = window.shopSearch || {}));
