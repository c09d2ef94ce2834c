// The one thing that a handbook in one file has beside the scripts of its pages. Which page is shown
// follows from the address and the style alone; here its name goes to the tab and to the edge of the
// paper, and Find learns where pages are.
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

  function target() {
    try {
      return document.getElementById(decodeURIComponent(location.hash.slice(1)));
    } catch (garbled) {
      return null;
    }
  }

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
    var there = target(), leaf = (there && there.closest(".leaf")) || document.querySelector(".leaf.front");
    var sheet = leaf.querySelector(".sheet");
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
  window.addEventListener("hashchange", function () { turn(true); });
  turn(false);
})();
