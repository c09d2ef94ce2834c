// Ticks that stay on this device while a procedure is done, and a clock for what must be seen in time.
// Nothing here is needed: without scripts a box is ticked all the same, until the page is closed.
// Every sheet of a document keeps its own: many procedures may stand in one file.
(function () {
  "use strict";
  var PREFIX = "garboard.ticks ";
  var LONG_AGO = 12 * 3600 * 1000;
  var MONTHS = ("January February March April May June July August September October November December").split(" ");

  // A device may refuse to keep anything; then the ticks last while the page is open, and it says so.
  function kept() {
    var found = {};
    try {
      for (var place = 0; place < window.localStorage.length; place += 1) {
        var name = window.localStorage.key(place);
        if (name.indexOf(PREFIX) === 0) {
          found[name] = true;
        }
      }
    } catch (refused) {
      return {};
    }
    return found;
  }
  function read(name) {
    try {
      var said = JSON.parse(window.localStorage.getItem(name));
      return said && Array.isArray(said.ticked) && typeof said.started === "number" ? said : null;
    } catch (refused) {
      return null;
    }
  }
  function write(name, said) {
    try {
      if (said) {
        window.localStorage.setItem(name, JSON.stringify(said));
      } else {
        window.localStorage.removeItem(name);
      }
      return true;
    } catch (refused) {
      return false;
    }
  }

  // Older editions of this vessel's handbook, and other steps under the same page of this one, are gone.
  function forget(lists) {
    var own = lists.map(function (list) { return list.name; });
    var mine = lists[0].parts;
    Object.keys(kept()).forEach(function (name) {
      var parts;
      try {
        parts = JSON.parse(name.slice(PREFIX.length));
      } catch (unreadable) {
        return;
      }
      if (!Array.isArray(parts) || parts[0] !== mine[0]) {
        return;
      }
      var older = parts[1] > 0 && parts[1] < mine[1];
      var replaced = parts[1] === mine[1] && parts[2] === mine[2] && own.indexOf(name) < 0;
      if (older || replaced) {
        write(name, null);
      }
    });
  }

  function two(number) {
    return (number < 10 ? "0" : "") + number;
  }
  function moment(when, now) {
    var clock = two(when.getHours()) + ":" + two(when.getMinutes());
    if (when.toDateString() === now.toDateString()) {
      return clock;
    }
    return "on " + when.getDate() + " " + MONTHS[when.getMonth()] + " " + when.getFullYear() + " at " + clock;
  }
  function made(tag, name, text) {
    var part = document.createElement(tag);
    part.className = name;
    part.textContent = text || "";
    return part;
  }
  function button(text, pressed) {
    var part = made("button", "", text);
    part.type = "button";
    part.addEventListener("click", pressed);
    return part;
  }

  function List(part) {
    var own = part.dataset;
    this.part = part;
    this.parts = [own.vessel, Number(own.copy), own.page, own.stamp];
    this.name = PREFIX + JSON.stringify(this.parts);
    this.boxes = Array.prototype.slice.call(part.querySelectorAll(".tick"));
    this.started = 0;
    this.stays = true;
    this.line = made("span", "said");
    this.line.setAttribute("role", "status");
    this.load();
  }
  List.prototype.load = function () {
    var said = read(this.name);
    this.started = said ? said.started : 0;
    this.boxes.forEach(function (box, place) {
      box.checked = !!said && said.ticked.indexOf(place) >= 0;
    });
    this.show();
  };
  List.prototype.keep = function () {
    var ticked = [];
    this.boxes.forEach(function (box, place) {
      if (box.checked) {
        ticked.push(place);
      }
    });
    this.started = ticked.length ? this.started || Date.now() : 0;
    this.stays = write(this.name, ticked.length ? { started: this.started, ticked: ticked } : null) || !ticked.length;
    this.show();
  };
  List.prototype.count = function () {
    return this.boxes.filter(function (box) { return box.checked; }).length;
  };
  List.prototype.show = function () {
    var count = this.count(), now = new Date();
    var text = count + " of " + this.boxes.length + " ticked";
    var old = count > 0 && now.getTime() - this.started > LONG_AGO;
    if (count) {
      text += ", started " + moment(new Date(this.started), now);
    }
    text += this.stays ? "." : ". This device keeps no ticks: they last only while this page is open.";
    if (old) {
      text += " Is this another time? Then start again first.";
    }
    if (this.line.textContent !== text) {
      this.line.textContent = text;
    }
    this.part.classList.toggle("old", old);
  };
  List.prototype.clear = function () {
    this.boxes.forEach(function (box) { box.checked = false; });
    this.keep();
  };

  // "Start again" asks in the page; nothing covers the steps.
  function bar(lists) {
    var place = lists[0].part.querySelector(".count");
    var again = button("Start again", ask);
    var question = made("span", "question");
    var words = made("span", "");
    var no = button("No, keep them", function () { answer(again); });
    var yes = button("Yes, start again", function () {
      lists.forEach(function (list) { list.clear(); });
      answer(lists[0].boxes[0]);
    });
    function total() {
      return lists.reduce(function (sum, list) { return sum + list.count(); }, 0);
    }
    function ask() {
      var count = total();
      words.textContent = count === 1 ? "Take the one tick away?" : "Take all " + count + " ticks away?";
      question.hidden = false;
      again.hidden = true;
      no.focus();
    }
    function answer(next) {
      question.hidden = true;
      show();
      next.focus();
    }
    function show() {
      again.hidden = !question.hidden || total() === 0;
    }
    question.setAttribute("role", "group");
    question.setAttribute("aria-label", "Start again");
    question.hidden = true;
    [words, yes, no].forEach(function (part) { question.appendChild(part); });
    place.appendChild(again);
    place.appendChild(question);
    show();
    return show;
  }

  // A clock shows what is left and says in words that time is over. It makes no sound.
  function left(seconds) {
    var hours = Math.floor(seconds / 3600);
    var rest = Math.floor(seconds / 60) % 60;
    return (hours ? hours + ":" + two(rest) : rest) + ":" + two(seconds % 60);
  }
  function clock(step, whole) {
    var line = made("div", "clock");
    var shown = made("span", "left", left(whole));
    var over = made("span", "over");
    var start = button("", function () { (ends ? stop : run)(); });
    var ends = 0, ticking = 0;
    function run() {
      ends = Date.now() + whole * 1000;
      over.textContent = "";
      start.textContent = "Stop clock";
      ticking = window.setInterval(tick, 250);
      tick();
    }
    function stop() {
      window.clearInterval(ticking);
      ends = 0;
      shown.textContent = left(whole);
      start.textContent = "Start clock";
    }
    function tick() {
      var remain = Math.ceil((ends - Date.now()) / 1000);
      if (remain > 0) {
        shown.textContent = left(remain);
        return;
      }
      stop();
      shown.textContent = left(0);
      over.textContent = "Time is over." + (step.querySelector(".if-not") ? " Not seen? Do what stands below." : "");
    }
    stop();
    shown.setAttribute("role", "timer");
    over.setAttribute("role", "status");
    [start, shown, over].forEach(function (part) { line.appendChild(part); });
    step.insertBefore(line, step.querySelector(".row").nextSibling);
    step.querySelector(".tick").addEventListener("change", function () {
      if (ends) {
        stop();
      }
    });
  }

  function open(sheet) {
    var lists = Array.prototype.map.call(sheet.querySelectorAll(".checklist"), function (part) { return new List(part); });
    if (!lists.length) {
      return;
    }
    forget(lists);
    lists.forEach(function (list) {
      list.part.querySelector(".count").appendChild(list.line);
    });
    var show = bar(lists);
    sheet.addEventListener("change", function (event) {
      lists.forEach(function (list) {
        if (list.boxes.indexOf(event.target) >= 0) {
          list.keep();
        }
      });
      show();
    });
    window.addEventListener("storage", function (event) { // the same page in another tab
      lists.forEach(function (list) {
        if (event.key === list.name) {
          list.load();
        }
      });
      show();
    });
    sheet.querySelectorAll(".within[data-seconds]").forEach(function (within) {
      clock(within.closest(".step"), Number(within.dataset.seconds));
    });
  }
  document.addEventListener("garboard:page", function (event) { // one more page of the one file
    event.target.querySelectorAll("article.sheet").forEach(open);
  });
  document.querySelectorAll("article.sheet").forEach(open);
})();
