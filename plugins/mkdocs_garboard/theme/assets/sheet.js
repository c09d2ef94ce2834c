// Small comforts of a page. Nothing here is needed to read it: without scripts Back leads to the
// section's first page, what may be folded stands open, and the light follows the device.
(function () {
  "use strict";
  var root = document.documentElement;

  function target() {
    try {
      return document.getElementById(decodeURIComponent(location.hash.slice(1)));
    } catch (garbled) {
      return null;
    }
  }
  function ready(page) {
    page.querySelectorAll("details.fold").forEach(function (fold) {
      fold.open = false;
    });
    rows(page);
  }
  function unfold() {
    document.querySelectorAll("details.fold").forEach(function (fold) {
      fold.open = true;
    });
    document.querySelectorAll(".printed-on").forEach(function (place) {
      place.textContent = day(new Date());
    });
  }
  window.addEventListener("beforeprint", unfold);

  // A row that is laid out as a list on a narrow screen is still a row of a table to those who listen.
  var roles = { table: "table", thead: "rowgroup", tbody: "rowgroup", tr: "row", td: "cell" };
  function rows(page) {
    page.querySelectorAll("table.limits").forEach(function (table) {
      [table].concat(Array.prototype.slice.call(table.querySelectorAll("thead, tbody, tr, th, td"))).forEach(function (part) {
        var name = part.tagName.toLowerCase();
        part.setAttribute("role", roles[name] || (part.scope === "col" ? "columnheader" : "rowheader"));
      });
    });
  }

  function land() {
    var there = target();
    var fold = there && there.closest("details");
    if (fold) {
      fold.open = true;
      there.scrollIntoView();
    }
  }
  document.addEventListener("garboard:page", function (event) { ready(event.target); }); // one more page of the one file
  window.addEventListener("hashchange", land);
  ready(document);
  land();

  document.addEventListener("keydown", function (event) {
    var fold = event.key === "Escape" && event.target.closest("details.fold[open]");
    if (fold) {
      fold.open = false;
      fold.querySelector("summary").focus();
    }
  });

  document.addEventListener("click", function (event) {
    if (event.target.closest("[data-back]") && window.history.length > 1) {
      event.preventDefault();
      window.history.back();
    }
  });

  document.querySelectorAll(".light").forEach(function (group) {
    group.hidden = false;
    var buttons = group.querySelectorAll("button");
    function show() {
      var light = root.getAttribute("data-light");
      buttons.forEach(function (button) {
        button.setAttribute("aria-pressed", String(button.value === light));
      });
    }
    buttons.forEach(function (button) {
      button.addEventListener("click", function () {
        root.setAttribute("data-light", button.value);
        try {
          window.localStorage.setItem("garboard.light", button.value);
        } catch (full) {
          // The choice then lasts for this page only.
        }
        show();
      });
    });
    show();
  });

  function day(date) {
    function two(number) {
      return (number < 10 ? "0" : "") + number;
    }
    return date.getFullYear() + "-" + two(date.getMonth() + 1) + "-" + two(date.getDate());
  }

  // An edition against the clock of this device. It stands first on the page, on paper too.
  var MONTHS = ("January February March April May June July August September October November December").split(" ");
  var WARNS = 30;
  function inWords(iso) {
    var parts = iso.split("-");
    return Number(parts[2]) + " " + MONTHS[Number(parts[1]) - 1] + " " + parts[0];
  }
  function noon(iso) {
    var parts = iso.split("-");
    return Date.UTC(Number(parts[0]), Number(parts[1]) - 1, Number(parts[2]), 12);
  }
  function days(count) {
    return count === 1 ? "1 day" : count + " days";
  }
  function stale(name, issued, until, today) {
    var left = Math.round((noon(until) - noon(today)) / 86400000);
    if (noon(today) < noon(issued) - 86400000) { // a day less may be the same day further west
      return [
        "THIS DEVICE'S CLOCK SAYS " + today + ", before " + name + " was issued (" + issued + ").",
        "Set the clock. Until then this page cannot tell whether the edition has run out: it is valid until " + inWords(until) + "."
      ];
    }
    if (left < 0) {
      return [
        "THIS EDITION RAN OUT ON " + inWords(until) + ", " + days(-left) + " ago by this device's clock.",
        "Ask for the next edition. Until it is here, do not rely on set values, due dates or temporary arrangements without asking the person in charge."
      ];
    }
    if (left <= WARNS) {
      return [
        "THIS EDITION RUNS OUT " + (left ? "IN " + days(left) + ", on " : "TODAY, ") + inWords(until) + ".",
        "Ask for the next edition now."
      ];
    }
    return null;
  }
  var sheet = document.querySelector(".sheet[data-until]");
  var said = sheet && stale(
    "edition " + sheet.getAttribute("data-edition"), sheet.getAttribute("data-issued"), sheet.getAttribute("data-until"), day(new Date())
  );
  if (said) {
    var banner = document.createElement("section");
    banner.className = "stale";
    banner.setAttribute("aria-label", "Whether this edition still holds");
    said.forEach(function (words, place) {
      var line = document.createElement(place ? "p" : "strong");
      line.textContent = words;
      banner.appendChild(line);
    });
    var own = document.body.classList.contains("garboard");
    (own ? document.body : sheet).insertBefore(banner, (own ? document.body : sheet).firstChild);
  }
})();
