// Figures in words, as people say them: "three thirty-seconds", "thirteen and an eighth", "two point four", "a hundred and forty".
// Leaves places in a row alone: "third fret", "second string". The words are those that narrations are read by (units.js).
(function (shop) {
  "use strict";

  // The words at the beginning of a text, each with where it ends; a hyphen parts words.
  function split(text) {
    var found = [];
    var next = /[\s-]*([a-z]+)/iy;
    for (var met = next.exec(text); met && found.length < 12; met = next.exec(text)) {
      found.push({ word: met[1].toLowerCase(), end: next.lastIndex });
    }
    return found;
  }

  function Reader(text, numbers) {
    this.words = split(text);
    this.numbers = numbers;
  }

  Reader.prototype.kind = function (at) {
    var one = this.words[at] && this.numbers.words[this.words[at].word];
    return one ? one[0] : "";
  };

  Reader.prototype.value = function (at) {
    return this.numbers.words[this.words[at].word][1];
  };

  // One to ninety-nine.
  Reader.prototype.small = function (at) {
    var kind = this.kind(at);
    if (kind === "ones" || kind === "teens") {
      return { value: this.value(at), at: at + 1, bare: false };
    }
    if (kind !== "tens") {
      return null;
    }
    var more = this.kind(at + 1) === "ones" ? this.value(at + 1) : 0;
    return { value: this.value(at) + more, at: at + (more ? 2 : 1), bare: !more };
  };

  // A whole number below a thousand.
  Reader.prototype.whole = function (at) {
    if (this.kind(at) === "zero") {
      return { value: 0, at: at + 1, bare: false };
    }
    var first = this.kind(at) === "article" ? { value: 1, at: at + 1, article: true } : this.small(at);
    if (first && this.kind(first.at) === "scale" && this.value(first.at) === 100) {
      var behind = first.at + 1;
      var more = this.small(this.kind(behind) === "and" ? behind + 1 : behind);
      return { value: first.value * 100 + (more ? more.value : 0), at: more ? more.at : behind, bare: false };
    }
    return first && !first.article ? first : null;
  };

  // A place in a row, "fourth" or "fourths", that a denominator may end with.
  Reader.prototype.ordinal = function (at) {
    var said = this.words[at] ? this.words[at].word : "";
    var plural = /s$/.test(said);
    var one = this.numbers.words[plural ? said.slice(0, -1) : said];
    return one && one[0] === "ordinal" ? { value: one[1], at: at + 1, plural: plural } : null;
  };

  Reader.prototype.below = function (at) {
    if (this.kind(at) === "part") {
      return { value: this.value(at), at: at + 1, plural: true, sure: true };
    }
    var tens = this.kind(at) === "tens" ? this.value(at) : 0;
    var last = this.ordinal(tens ? at + 1 : at);
    if (!last || (tens ? last.value > 9 : last.value < 3)) {
      return null;
    }
    var value = tens + last.value;
    var known = this.numbers.marks.indexOf(value) >= 0 || this.numbers.others.indexOf(value) >= 0;
    return known ? { value: value, at: last.at, plural: last.plural, sure: last.plural || this.numbers.marks.indexOf(value) >= 0 } : null;
  };

  // Less than one, or more in one denominator: "an eighth", "half", "eleven sixty-fourths".
  Reader.prototype.fraction = function (at) {
    var top = this.kind(at) === "article" ? { value: 1, at: at + 1, bare: false } : this.small(at);
    if (!top && this.kind(at) === "part") {
      top = { value: 1, at: at, bare: false };
    }
    var below = top && this.below(top.at);
    if (!below || (top.value > 1 && !below.plural) || (top.bare && this.ordinal(top.at))) {
      return null;
    }
    return { value: top.value / below.value, below: below.value, decimals: 0, at: below.at, sure: below.sure };
  };

  Reader.prototype.mixed = function (at) {
    var whole = this.whole(at);
    var part = whole && this.kind(whole.at) === "and" ? this.fraction(whole.at + 1) : null;
    return part && part.value < 1 ? { value: whole.value + part.value, below: part.below, decimals: 0, at: part.at, sure: true } : null;
  };

  Reader.prototype.decimal = function (at) {
    var whole = this.kind(at) === "point" ? { value: 0, at: at } : this.whole(at);
    if (!whole || this.kind(whole.at) !== "point") {
      return null;
    }
    var digits = "";
    var next = whole.at + 1;
    while (["ones", "zero", "oh", "teens"].indexOf(this.kind(next)) >= 0) {
      digits += this.value(next);
      next += 1;
    }
    return digits ? { value: Number(whole.value + "." + digits), below: 0, decimals: digits.length, at: next, sure: true } : null;
  };

  // A number in words at the beginning of a text: its value, how it is written, and what is left; null where there is none.
  // `isUnit` says whether a text begins with a unit.
  shop.spelled = function (text, numbers, isUnit) {
    var reader = new Reader(text, numbers);
    var whole = reader.whole(0);
    var met = reader.decimal(0) || reader.mixed(0) || reader.fraction(0) || (whole && { value: whole.value, below: 0, decimals: 0, at: whole.at, sure: true });
    if (!met) {
      return null;
    }
    var rest = text.slice(reader.words[met.at - 1].end);
    if (met.below) {
      var of = /^\s+(?:of\s+)?an?\s+/i.exec(rest);
      rest = of && isUnit(rest.slice(of[0].length)) ? rest.slice(of[0].length) : rest;
    }
    // "a third string" is a place in a row.
    return met.sure || isUnit(rest) ? { value: met.value, below: met.below, decimals: met.decimals, rest: rest } : null;
  };
})((window.shopSearch = window.shopSearch || {}));
