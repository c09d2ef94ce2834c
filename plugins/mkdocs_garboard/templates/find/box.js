// The box on a page. The list of what can be found is a script too, loaded when the box is first entered, so
// that it works from a folder without any network.
//
// In a document of another build, set before this script runs: `garboardIndex`, and nothing is loaded;
// `garboardWay(path, anchor)`, which gives the way to a page ("id/SA-RV-001") and a place on it ("" for
// none), both as they stand in an address.

var AT_ONCE = 8;
var root = document.documentElement.getAttribute("data-root");
var way = window.garboardWay || (root === null ? null : function (path, anchor) {
  return root + path + ".html" + (anchor ? "#" + anchor : "");
});
var known = null, waiting = [];
function load(then) {
  if (!known && window.garboardIndex) {
    known = ready(window.garboardIndex);
  }
  if (known) {
    then();
    return;
  }
  waiting.push(then);
  if (waiting.length > 1) {
    return;
  }
  var script = document.createElement("script");
  script.src = root + "assets/find-index.js";
  script.onload = function () {
    known = ready(window.garboardIndex);
    waiting.splice(0).forEach(function (one) { one(); });
  };
  script.onerror = function () {
    waiting.length = 0;
    document.querySelectorAll(".find .count").forEach(function (count) {
      count.textContent = "the list of what can be found is missing from this copy: use A to Z, or the contents";
    });
  };
  document.head.appendChild(script);
}

function line(parent, kind, text) {
  var made = document.createElement(kind);
  made.textContent = text;
  parent.appendChild(made);
  return made;
}
function add(list, result) {
  var entry = result.entry;
  var link = line(line(list, "li", ""), "a", "");
  link.href = way(entry.path, entry.anchor);
  line(link, "b", entry.title);
  line(link, "span", [entry.kind, entry.system].filter(Boolean).join(", ")).className = "kind";
  if (entry.review) {
    line(link, "span", entry.review).className = /^DO NOT USE/.test(entry.review) ? "state never" : "state";
  }
  if (entry.text) {
    line(link, "span", entry.text).className = "says";
  }
}
// Where to look when nothing was found: by what is seen or heard, by the panel, by name.
var INSTEAD = ["registers/emergencies", "registers/alarms", "registers/symptoms", "registers/a-to-z"];
function instead(list) {
  line(list, "li", "Try one word of it, or look here:");
  INSTEAD.forEach(function (path) {
    known.entries.forEach(function (entry) { if (entry.path === path && !entry.anchor) { add(list, { entry: entry }); } });
  });
}
function show(box, list, count) {
  var answer = find(known, box.value), question = box.value;
  list.textContent = "";
  list.classList.toggle("instead", !answer.all);
  count.textContent = "";
  if (!question.trim()) {
    return;
  }
  answer.results.slice(0, AT_ONCE).forEach(function (result) { add(list, result); });
  if (answer.results.length > AT_ONCE) {
    setTimeout(function () {
      if (box.value === question && list.childElementCount === AT_ONCE) {
        answer.results.slice(AT_ONCE).forEach(function (result) { add(list, result); });
      }
    }, 150);
  }
  var found = answer.all ? answer.all + " found" + (answer.all > MOST ? ", the first " + MOST + " shown" : "") : "";
  count.textContent = [answer.note, found].filter(Boolean).join("; ");
  if (answer.near) {
    count.appendChild(document.createTextNode("; nearest "));
    var link = line(count, "a", answer.near.name);
    link.href = way(answer.near.entry.path, answer.near.entry.anchor);
  }
  if (!answer.all) { instead(list); }
}

function open(part) {
  var box = part.querySelector("input");
  var list = part.querySelector(".found");
  var count = part.querySelector(".count");
  part.hidden = false;
  function ask() {
    load(function () { show(box, list, count); });
  }
  function warm() {
    load(function () { return undefined; });
  }
  box.addEventListener("focus", warm);
  if (document.activeElement === box) { // it had the focus before this script ran
    warm();
  }
  box.addEventListener("input", ask);
  part.addEventListener("keydown", function (event) {
    var links = Array.prototype.slice.call(list.querySelectorAll("a"));
    var at = links.indexOf(document.activeElement);
    if (event.key === "Enter" && event.target === box) {
      event.preventDefault();
      if (links[0] && !list.classList.contains("instead")) { links[0].click(); }
    } else if (event.key === "ArrowDown" && links[at + 1]) {
      event.preventDefault();
      links[at + 1].focus();
    } else if (event.key === "ArrowUp" && at >= 0) {
      event.preventDefault();
      (links[at - 1] || box).focus();
    } else if (event.key === "Escape" && box.value) {
      box.value = "";
      ask();
      box.focus();
    }
  });
  if (part.classList.contains("whole")) {
    var without = document.querySelector(".without");
    if (without) {
      without.hidden = true;
    }
    var asked = window.garboardWay ? "" : decodeURIComponent(location.hash.slice(1));
    if (asked) {
      box.value = asked;
      ask();
    }
  }
}
if (way) {
  document.addEventListener("garboard:page", function (event) { // one more page of the one file
    event.target.querySelectorAll(".find").forEach(open);
  });
  document.querySelectorAll(".find").forEach(open);
}
