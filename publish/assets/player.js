// Times on the page seek the player beside it. Without this script they are plain links that play from there.
(function () {
  "use strict";

  var player = document.getElementById("player");
  if (!player) {
    return;
  }
  var status = document.getElementById("playing");
  var rule = document.querySelector(".rule");
  var playhead = document.getElementById("playhead");
  var cues = Array.prototype.slice.call(document.querySelectorAll("[data-from]"));
  var screen = player.parentElement;
  var current = null;
  var cued = false;
  var inSight = true;

  // Once a time has been pressed, the recording is kept in sight when its place on the page scrolls away.
  function keepInSight() {
    document.documentElement.classList.toggle("aloft", cued && !inSight);
  }
  if (window.IntersectionObserver) {
    new IntersectionObserver(function (entries) {
      inSight = entries[entries.length - 1].isIntersecting;
      keepInSight();
    }).observe(screen);
  }

  function seek(seconds, told) {
    player.currentTime = seconds;
    cued = true;
    keepInSight();
    if (status && told) {
      status.textContent = "Playing from " + told;
    }
    var playing = player.play();
    if (playing) {
      playing.catch(function () {
        // The browser wants a press on the player itself first; the place is found all the same.
      });
    }
  }

  document.addEventListener("click", function (event) {
    var link = event.target.closest && event.target.closest("a[data-seconds]");
    if (!link || event.button || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) {
      return;
    }
    event.preventDefault();
    seek(Number(link.dataset.seconds), link.textContent);
  });

  // The rule: pressed anywhere, it plays from there.
  function ruleSeconds() {
    return Number(rule.dataset.seconds);
  }
  function ruleInset() {
    return Number(rule.dataset.inset) / Number(rule.dataset.width);
  }
  if (rule) {
    rule.addEventListener("click", function (event) {
      var box = rule.getBoundingClientRect();
      var inset = ruleInset();
      var share = ((event.clientX - box.left) / box.width - inset) / (1 - 2 * inset);
      seek(Math.min(Math.max(share, 0), 1) * ruleSeconds(), "");
    });
  }

  function showPlace() {
    var now = player.currentTime;
    if (rule && playhead) {
      var length = Number(rule.dataset.width) - 2 * Number(rule.dataset.inset);
      playhead.setAttribute("transform", "translate(" + (Math.min(now / ruleSeconds(), 1) * length).toFixed(1) + " 0)");
      rule.classList.add("live");
    }
    var found = null;
    for (var i = 0; i < cues.length; i += 1) {
      if (Number(cues[i].dataset.from) <= now + 0.05 && now < Number(cues[i].dataset.until)) {
        found = cues[i];
      }
    }
    if (found !== current) {
      if (current) {
        current.removeAttribute("aria-current");
      }
      if (found) {
        found.setAttribute("aria-current", "true");
      }
      current = found;
    }
  }
  player.addEventListener("timeupdate", showPlace);
  player.addEventListener("seeked", showPlace);

  // From a disk, browsers refuse to read caption files; the page has the same words, so they are taken from it.
  function captionsFromPage() {
    Array.prototype.slice.call(player.querySelectorAll("track")).forEach(function (track) {
      track.remove();
    });
    var Cue = window.VTTCue;
    if (!Cue || !cues.length) {
      return;
    }
    var track = player.addTextTrack("captions", "What is said, with corrections", document.documentElement.lang);
    track.mode = "disabled";
    cues.forEach(function (cue) {
      var line = cue.querySelector("p").cloneNode(true);
      Array.prototype.slice.call(line.querySelectorAll(".unseen")).forEach(function (part) {
        part.remove();
      });
      var words = line.textContent.replace(/&/g, "&amp;").replace(/</g, "&lt;");
      track.addCue(new Cue(Number(cue.dataset.from), Number(cue.dataset.until), words));
    });
  }
  if (window.location.protocol === "file:") {
    captionsFromPage();
  }
})();
