// The index: small scripts of plain data, each loaded when a question needs it. They load from a disk as from a server.
(function (shop) {
  "use strict";

  var STEPS = 12; // marks an octave, as the index was made
  var LETTERS = 2; // letters that name a shard
  var here = document.currentScript.src.replace(/assets\/search\/index\.js.*$/, "search/");
  var taken = {};
  var waiting = {};

  // Each file hands over its data by this name.
  shop.take = function (name, data) {
    taken[name] = data;
  };

  shop.load = function (name) {
    waiting[name] = waiting[name] || new Promise(function (done, failed) {
      var script = document.createElement("script");
      script.src = here + name.split("/").map(encodeURIComponent).join("/") + ".js";
      script.onload = function () {
        done(taken[name]);
        script.remove();
      };
      script.onerror = function () {
        delete waiting[name];
        failed(new Error(name));
      };
      document.head.appendChild(script);
    });
    return waiting[name];
  };

  // Where a term lies: its first letters; of a number, its first figure.
  function shard(term, letters) {
    letters = letters || (/^\p{Nd}/u.test(term) ? 1 : LETTERS);
    return Array.from(term).slice(0, letters).join("").replace(/[^a-z0-9]/gu, "_");
  }

  function numbers(steps) {
    var at = 0;
    return steps.map(function (step, place) {
      at = place ? at + step : step;
      return at;
    });
  }

  // The numbers of the sessions in those lists of a shard that `fits` takes.
  function gather(names, fits) {
    return Promise.all(names.map(shop.load)).then(function (shards) {
      var found = new Set();
      shards.forEach(function (lists) {
        Object.keys(lists).filter(fits).forEach(function (key) {
          numbers(lists[key]).forEach(function (one) {
            found.add(one);
          });
        });
      });
      return found;
    });
  }

  function holding(stem, known) {
    var begun = "t-" + shard(stem);
    var names = known.shards.filter(function (name) {
      return stem.length < LETTERS ? name.indexOf(begun) === 0 : name === begun;
    });
    return gather(names, function (key) {
      return key.indexOf(stem) === 0;
    });
  }

  function mark(value) {
    return Math.floor(Math.log2(value) * STEPS);
  }

  function meeting(figure, known) {
    var name = "f-" + shard(figure.span.kind, figure.span.kind.length);
    var span = figure.span;
    var from = figure.bound === "below" ? -Infinity : figure.bound === "above" ? span.high : span.low;
    var to = figure.bound === "above" ? Infinity : figure.bound === "below" ? span.low : span.high;
    return gather(known.shards.indexOf(name) < 0 ? [] : [name], function (key) {
      if (key === "0") {
        return from <= 0;
      }
      return (from <= 0 || Number(key) >= mark(from) - 1) && to > 0 && (to === Infinity || Number(key) <= mark(to) + 1);
    });
  }

  // The sessions that may hold all that is asked for, the newest first, by the names of their folders.
  shop.candidates = function (question) {
    return shop.load("sessions").then(function (known) {
      var sets = question.words.map(function (stem) {
        return holding(stem, known);
      }).concat(question.figures.map(function (figure) {
        return meeting(figure, known);
      }));
      return Promise.all(sets).then(function (found) {
        return known.slugs.filter(function (_, number) {
          return found.every(function (set) {
            return set.has(number);
          });
        }).reverse();
      });
    });
  };

  function met(figure, item) {
    if (item[5] !== figure.span.kind) {
      return false;
    }
    if (figure.bound === "above") {
      return item[7] > figure.span.high;
    }
    return figure.bound === "below" ? item[6] < figure.span.low : item[6] <= figure.span.high && item[7] >= figure.span.low;
  }

  function begins(stems, word) {
    return stems.some(function (stem) { return stem.indexOf(word) === 0; });
  }

  function stemsOf(item) {
    item.stems = item.stems || shop.stemsIn(item[4] || item[3]);
    return item.stems;
  }

  // What of a session meets the question: every word in one item, and every figure.
  shop.within = function (slug, question) {
    return shop.load("items/" + slug).then(function (session) {
      var around = shop.stemsIn(session.around);
      return session.items.filter(function (item) {
        if (!question.figures.every(function (figure) { return met(figure, item); })) {
          return false;
        }
        return question.words.every(function (word) {
          return begins(around, word) || begins(stemsOf(item), word);
        });
      }).map(function (item) {
        var own = question.words.filter(function (word) { return begins(stemsOf(item), word); }).length;
        return { own: own, slug: slug, title: session.title, date: session.date, sort: item[0], start: item[1], anchor: item[2], told: item[3] };
      });
    });
  };
})((window.shopSearch = window.shopSearch || {}));
