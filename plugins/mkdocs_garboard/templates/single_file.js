// The one thing that a handbook in one file has beside the scripts of its pages. Which page is shown
// follows from the address and the style alone; here a page is unpacked when it is asked for, its name
// goes to the tab and to the edge of the paper, and Find learns where pages are.
(function () {
  "use strict";
  var root = document.documentElement;

  // The same names as the places were given when the pages were joined.
  function named(text) {
    return decodeURIComponent(text).replace(/[\s:~]/g, function (sign) {
      return "~" + sign.codePointAt(0).toString(16) + "~";
    });
  }
  window.garboardWay = function (path, anchor) {
    return "#" + encodeURI(named(path) + (anchor ? ":" + named(anchor) : ""));
  };

  function meant(hash) {
    try {
      return decodeURIComponent(hash.slice(1));
    } catch (garbled) {
      return "";
    }
  }
  function target() {
    return document.getElementById(meant(location.hash));
  }

  // Where scripts run, a browser keeps what stands in a noscript as plain text: all pages but the
  // first are read in a moment, and only those that somebody opens take time and memory.
  var packed = Object.create(null);
  document.querySelectorAll(".leaf").forEach(function (leaf) {
    if (leaf.firstElementChild.tagName === "NOSCRIPT") {
      packed[leaf.getAttribute("data-page")] = leaf;
    }
  });
  function unpack(page) {
    var leaf = packed[page];
    if (!leaf) {
      return false;
    }
    delete packed[page];
    leaf.innerHTML = leaf.firstElementChild.textContent;
    leaf.dispatchEvent(new CustomEvent("garboard:page", { bubbles: true }));
    return true;
  }
  function open(hash) {
    return unpack(meant(hash).split(":")[0]);
  }
  if (!(window.CSS && CSS.supports && CSS.supports("selector(:has(*))"))) {
    Object.keys(packed).forEach(unpack); // this browser shows all pages, one after another
  }
  open(location.hash);

  // While a browser still reads, and where it prints a copy, the place in the address counts for
  // nothing: then the page that is meant bears a mark.
  function shown() {
    var there = target();
    return (there && there.closest(".leaf")) || document.querySelector(".leaf.front");
  }
  function mark() {
    shown().classList.add("shown");
  }
  function unmark() {
    document.querySelectorAll(".shown").forEach(function (leaf) { leaf.classList.remove("shown"); });
  }
  mark();
  if (target() && !target().classList.contains("sheet")) {
    target().scrollIntoView();
  }
  window.addEventListener("load", unmark);
  window.addEventListener("beforeprint", mark);
  window.addEventListener("afterprint", unmark);

  document.addEventListener("click", function (event) { // before the browser looks for the place
    var link = event.target.closest("a[href^='#']");
    if (link) {
      unmark();
      open(link.getAttribute("href"));
    }
  }, true);

  // The edge of each sheet of paper names the page that is printed.
  var style = document.styleSheets[0], edge = -1;
  function quoted(text) {
    return '"' + text.replace(/[^\w .,:-]/g, function (sign) {
      return "\\" + sign.codePointAt(0).toString(16) + " ";
    }) + '"';
  }
  function words(part, selector) {
    var found = part.querySelector(selector);
    return found ? found.textContent.trim() : "";
  }
  function name(sheet) {
    var title = words(sheet, "h1"), ident = words(sheet, ".ident");
    var state = words(sheet, ".title-block .review").split(".")[0];
    var rule = "@top-left{content:" + quoted([ident, title].filter(Boolean).join(" \u00b7 ")) + "}";
    if (state) {
      rule += "@bottom-left{content:" + quoted(root.getAttribute("data-line") + " \u00b7 " + state) + "}";
    }
    document.title = root.getAttribute("data-before") + title + root.getAttribute("data-after");
    if (edge >= 0) {
      style.deleteRule(edge);
    }
    edge = style.insertRule("@page{" + rule + "}", style.cssRules.length);
  }

  function turn(turned) {
    var there = target(), leaf = shown(), sheet = leaf.querySelector(".sheet");
    name(sheet);
    document.querySelectorAll(".near-by [aria-current]").forEach(function (link) {
      link.removeAttribute("aria-current");
    });
    leaf.parentNode.querySelectorAll(".near-by a").forEach(function (link) {
      if (decodeURIComponent(link.hash.slice(1)) === sheet.id) {
        link.setAttribute("aria-current", "page");
      }
    });
    // Whoever listens hears the page that was opened, and the keyboard goes on from its head.
    if (turned && (there === sheet || !there)) {
      sheet.tabIndex = -1;
      sheet.focus({ preventScroll: true });
    }
  }
  window.addEventListener("hashchange", function () {
    unmark();
    if (open(location.hash)) { // it was not there when the browser looked for it, so it looks again
      location.replace(location.hash);
    }
    turn(true);
  });
  turn(false);
})();
