// The search page: asks the index, reads a few sessions at a time, and lists what is found. All text is put in as text.
(function (shop) {
  "use strict";

  var AT_ONCE = 12; // sessions read before the next look at what is found
  var ENOUGH = 25; // hits after which a person is asked whether to go on
  var form = document.getElementById("asking");
  var field = document.getElementById("question");
  var told = document.getElementById("told");
  var list = document.getElementById("hits");
  var further = document.getElementById("further");
  var asked = 0;

  function count(number, one) {
    return number + " " + (number === 1 ? one : one + "s");
  }

  function clock(seconds) {
    var whole = Math.max(Math.floor(seconds), 0);
    var rest = [Math.floor(whole / 60) % 60, whole % 60];
    var hours = Math.floor(whole / 3600);
    return (hours ? hours + ":" + String(rest[0]).padStart(2, "0") : rest[0]) + ":" + String(rest[1]).padStart(2, "0");
  }

  function element(name, className, text) {
    var made = document.createElement(name);
    made.className = className;
    made.textContent = text;
    return made;
  }

  // The page of a session, or of a procedure over all sessions.
  function pageOf(slug) {
    var parts = slug.split("/").map(encodeURIComponent);
    return parts.length > 1 ? parts.join("/") + ".html" : "sessions/" + parts[0] + "/index.html";
  }

  function place(hit) {
    if (hit.start === null) {
      return hit.sort === "procedure" ? "over all sessions" : hit.sort + " over all sessions, in " + hit.title;
    }
    return hit.sort + " in " + hit.title + (hit.date ? " (" + hit.date + ")" : "") + " at " + clock(hit.start);
  }

  function entry(hit) {
    var row = element("li", "entry", "");
    var line = element("p", "", "");
    var link = element("a", "", hit.told);
    link.href = "../" + pageOf(hit.slug) + "#" + encodeURIComponent(hit.anchor);
    line.append(link);
    var from = element("p", "aside", place(hit));
    row.append(line, from);
    return row;
  }

  // First what has most of the words in itself and not in the session's title alone; bare talk last.
  function byWorth(one, other) {
    return other.own - one.own || (one.sort === "said") - (other.sort === "said");
  }

  // Reads sessions, newest first, till there is enough to show or none is left.
  function read(search) {
    var batch = search.sessions.splice(0, AT_ONCE);
    return Promise.all(batch.map(function (slug) { return shop.within(slug, search.question); })).then(function (found) {
      search.waiting = search.waiting.concat([].concat.apply([], found).sort(byWorth));
      return search.sessions.length && search.waiting.length < ENOUGH ? read(search) : search;
    });
  }

  function show(search) {
    if (search.turn !== asked) {
      return;
    }
    list.append.apply(list, search.waiting.splice(0, ENOUGH).map(entry));
    var shown = list.children.length;
    var more = search.waiting.length + search.sessions.length > 0;
    told.textContent = more ? count(shown, "place") + " shown; there may be more." :
      (shown ? count(shown, "place") + " found." : "Nothing found.");
    further.hidden = !more;
    further.firstElementChild.onclick = function () {
      (search.waiting.length < ENOUGH && search.sessions.length ? read(search) : Promise.resolve(search)).then(function () {
        show(search);
        var first = list.children[shown];
        (first ? first.querySelector("a") : field).focus();
      });
    };
  }

  function ask(text) {
    var turn = (asked += 1);
    list.replaceChildren();
    further.hidden = true;
    told.textContent = text.trim() ? "Looking …" : "";
    if (!text.trim()) {
      return;
    }
    shop.load("units").then(function (units) {
      var question = shop.read(text, units);
      if (!question.words.length && !question.figures.length) {
        told.textContent = "Write words or figures, such as saddle slot 3/32.";
        return;
      }
      return shop.candidates(question).then(function (sessions) {
        return read({ question: question, sessions: sessions, waiting: [], turn: turn }).then(show);
      });
    }).catch(function () {
      told.textContent = "The search’s files can’t be read here. On the machine that has the shop, spokeshave find searches the same notes.";
    });
  }

  form.addEventListener("submit", function (event) {
    event.preventDefault();
    history.replaceState(null, "", "?" + new URLSearchParams({ q: field.value }));
    ask(field.value);
  });
  field.value = new URLSearchParams(location.search).get("q") || "";
  ask(field.value);
  field.focus();
})((window.shopSearch = window.shopSearch || {}));
