// Words as they are compared: folded, without endings, by ear, and how far two of them are apart. A name or
// a number is never guessed; a word of five letters and more forgives one letter.

var BARE = /^[\x20-\x7e]*$/;
function plain(text) {
  if (BARE.test(text)) { // most are: nothing to fold but the letters
    return text.toLowerCase().replace(/['`]/g, "");
  }
  return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase()
    .replace(/[\u2019\u2018'`]/g, "").replace(/\u00b3/g, "3").replace(/\u00b2/g, "2").replace(/[\u00a0\u202f]/g, " ");
}
function key(text) {
  return plain(text).replace(/[\s\-./_\u2010-\u2015]+/g, "");
}
function split(text) {
  return plain(text).match(/[a-z0-9\u00df-\uffff]+/g) || [];
}
var NAME = /[a-z]{2}-[a-z]{2}-\d{3}/g;
// A word without its endings: `batteries`, `batterys` and `battery` are one, `charging` and `charge`. Never with digits.
var STEMS = new Map();
function stem(word) {
  if (!STEMS.has(word)) { STEMS.set(word, word.length < 4 || /\d/.test(word) ? word : cutBack(word)); }
  return STEMS.get(word);
}
function cutBack(word) {
  var one = word.replace(/ies$/, "y").replace(/([^s])s$/, "$1");
  var cut = one.replace(/(?:ing|ed|ion)$/, "");
  if (cut.length >= 3 && /[aeiouy]/.test(cut)) { one = cut; }
  return one.replace(/e$/, "").replace(/([b-df-hj-np-tv-z])\1$/, "$1");
}
// A word as it is heard: `resever` and `receiver` are one, `gage` and `gauge`.
function sound(word) {
  return word[0] + word.slice(1).replace(/ph/g, "f").replace(/gh/g, "").replace(/ck|q/g, "k").replace(/c(?=[eiy])/g, "s").replace(/c/g, "k")
    .replace(/g(?=[eiy])/g, "j").replace(/z/g, "s").replace(/[aeiouyhw]/g, "").replace(/(.)\1+/g, "$1");
}
// A name without the noughts before its number: `SA-RV-001` is `sarv1`.
function unpadded(folded) {
  return folded.replace(/^([a-z]+)0+(?=\d)/, "$1");
}

// One letter more, less or other, or two changed round.
function oneApart(one, other) {
  var shorter = one.length <= other.length ? one : other, longer = shorter === one ? other : one;
  var first = 0, most = shorter.length;
  while (first < most && shorter[first] === longer[first]) { first += 1; }
  if (longer.length > most) {
    return shorter.slice(first) === longer.slice(first + 1);
  }
  return shorter.slice(first + 1) === longer.slice(first + 1) ||
    (shorter[first] === longer[first + 1] && shorter[first + 1] === longer[first] && shorter.slice(first + 2) === longer.slice(first + 2));
}
function apart(one, other, limit) {
  if (Math.abs(one.length - other.length) > limit) {
    return limit + 1;
  }
  var before = null, last = [], row, i, j;
  for (j = 0; j <= other.length; j += 1) {
    last.push(j);
  }
  for (i = 1; i <= one.length; i += 1) {
    row = [i];
    var least = i;
    for (j = 1; j <= other.length; j += 1) {
      var cost = one[i - 1] === other[j - 1] ? 0 : 1;
      var value = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + cost);
      if (before && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
        value = Math.min(value, before[j - 2] + 1);
      }
      row.push(value);
      least = Math.min(least, value);
    }
    if (least > limit) {
      return limit + 1;
    }
    before = last;
    last = row;
  }
  return last[other.length];
}

function alike(one, other) {
  var at = 0;
  while (at < one.length && one[at] === other[at]) {
    at += 1;
  }
  return at;
}
