// Small comforts of a page. Nothing here is needed to read it: without scripts Back leads to the
// section's first page, what may be folded stands open, and the light follows the device.
(function () {
  "use strict";
  var root = document.documentElement;

  document.querySelectorAll("details.fold").forEach(function (fold) {
    fold.open = false;
  });
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
  document.querySelectorAll("table.limits").forEach(function (table) {
    [table].concat(Array.prototype.slice.call(table.querySelectorAll("thead, tbody, tr, th, td"))).forEach(function (part) {
      var name = part.tagName.toLowerCase();
      part.setAttribute("role", roles[name] || (part.scope === "col" ? "columnheader" : "rowheader"));
    });
  });

  // A formula wider than the screen can be reached and scrolled with the keyboard.
  document.querySelectorAll(".formula").forEach(function (formula) {
    if (formula.scrollWidth > formula.clientWidth) {
      formula.tabIndex = 0;
    }
  });

  function land() {
    var name = decodeURIComponent(location.hash.slice(1));
    var there = name && document.getElementById(name);
    var fold = there && there.closest("details");
    if (fold) {
      fold.open = true;
      there.scrollIntoView();
    }
  }
  window.addEventListener("hashchange", land);
  land();

  var back = document.querySelector("[data-back]");
  if (back) {
    back.addEventListener("click", function (event) {
      if (window.history.length > 1) {
        event.preventDefault();
        window.history.back();
      }
    });
  }

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
  var sheet = document.querySelector(".sheet[data-until]");
  if (sheet && day(new Date()) > sheet.getAttribute("data-until")) {
    var past = document.createElement("p");
    past.className = "past";
    past.textContent = "PAST ITS DATE. This copy was valid until " + sheet.getAttribute("data-until") + ".";
    sheet.insertBefore(past, sheet.querySelector("h1"));
  }
})();
