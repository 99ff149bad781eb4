// Words as the search compares them: without case and accents, by their stems.
// The stems are M. F. Porter's, "An algorithm for suffix stripping", Program 14 (1980), steps 1a to 5b.
(function (shop) {
  "use strict";

  function isVowel(word, at) {
    var letter = word[at];
    return "aeiou".indexOf(letter) >= 0 || (letter === "y" && at > 0 && !isVowel(word, at - 1));
  }

  // How many times vowels are followed by consonants.
  function measure(word) {
    var times = 0;
    for (var at = 1; at < word.length; at += 1) {
      times += isVowel(word, at - 1) && !isVowel(word, at) ? 1 : 0;
    }
    return times;
  }

  function hasVowel(word) {
    for (var at = 0; at < word.length; at += 1) {
      if (isVowel(word, at)) {
        return true;
      }
    }
    return false;
  }

  function endsDouble(word) {
    var last = word.length - 1;
    return last > 0 && word[last] === word[last - 1] && !isVowel(word, last);
  }

  // Consonant, vowel, consonant, the last one not w, x or y.
  function endsShort(word) {
    var last = word.length - 1;
    return (
      last > 1 && !isVowel(word, last) && isVowel(word, last - 1) && !isVowel(word, last - 2) &&
      "wxy".indexOf(word[last]) < 0
    );
  }

  // The first of the endings that the word has decides, whether or not its condition holds.
  function swap(word, endings, least) {
    for (var at = 0; at < endings.length; at += 1) {
      var ending = endings[at][0];
      if (word.length > ending.length && word.slice(-ending.length) === ending) {
        var stem = word.slice(0, -ending.length);
        var fits = measure(stem) > least && (ending !== "ion" || /[st]$/.test(stem));
        return fits ? stem + endings[at][1] : word;
      }
    }
    return word;
  }

  var SECOND = [
    ["ational", "ate"], ["tional", "tion"], ["enci", "ence"], ["anci", "ance"], ["izer", "ize"], ["logi", "log"], ["bli", "ble"],
    ["alli", "al"], ["entli", "ent"], ["eli", "e"], ["ousli", "ous"], ["ization", "ize"], ["ation", "ate"],
    ["ator", "ate"], ["alism", "al"], ["iveness", "ive"], ["fulness", "ful"], ["ousness", "ous"], ["aliti", "al"],
    ["iviti", "ive"], ["biliti", "ble"]
  ];
  var THIRD = [
    ["icate", "ic"], ["ative", ""], ["alize", "al"], ["iciti", "ic"], ["ical", "ic"], ["ful", ""], ["ness", ""]
  ];
  var FOURTH = [
    ["al", ""], ["ance", ""], ["ence", ""], ["er", ""], ["ic", ""], ["able", ""], ["ible", ""], ["ant", ""],
    ["ement", ""], ["ment", ""], ["ent", ""], ["ion", ""], ["ou", ""], ["ism", ""], ["ate", ""], ["iti", ""],
    ["ous", ""], ["ive", ""], ["ize", ""]
  ];

  function plurals(word) {
    if (/sses$|ies$/.test(word)) {
      return word.slice(0, -2);
    }
    return /[^s]s$/.test(word) ? word.slice(0, -1) : word;
  }

  function tenses(word) {
    if (/eed$/.test(word)) {
      return measure(word.slice(0, -3)) > 0 ? word.slice(0, -1) : word;
    }
    var stem = /ed$/.test(word) ? word.slice(0, -2) : /ing$/.test(word) ? word.slice(0, -3) : null;
    if (stem === null || !hasVowel(stem)) {
      return word;
    }
    if (/at$|bl$|iz$/.test(stem)) {
      return stem + "e";
    }
    if (endsDouble(stem) && !/[lsz]$/.test(stem)) {
      return stem.slice(0, -1);
    }
    return measure(stem) === 1 && endsShort(stem) ? stem + "e" : stem;
  }

  function stem(word) {
    var bytes = new TextEncoder().encode(word).length; // what is very short or long stays as it is
    if (bytes < 3 || bytes > 64) {
      return word;
    }
    word = tenses(plurals(word));
    if (/y$/.test(word) && hasVowel(word.slice(0, -1))) {
      word = word.slice(0, -1) + "i";
    }
    word = swap(swap(swap(word, SECOND, 0), THIRD, 0), FOURTH, 1);
    if (/e$/.test(word)) {
      var bare = word.slice(0, -1);
      if (measure(bare) > 1 || (measure(bare) === 1 && !endsShort(bare))) {
        word = bare;
      }
    }
    return measure(word) > 1 && /ll$/.test(word) ? word.slice(0, -1) : word;
  }

  function words(text) {
    var plain = text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
    return plain.match(/[\p{L}\p{N}\p{Co}]+/gu) || [];
  }

  shop.stem = stem;
  shop.stemsIn = function (text) {
    return words(text).map(stem);
  };
})((window.shopSearch = window.shopSearch || {}));
