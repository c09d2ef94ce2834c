// Sets the light before anything is painted: day, dim or red, as this reader chose last.
(function () {
  "use strict";
  var light = null;
  try {
    light = window.localStorage.getItem("garboard.light");
  } catch (refused) {
    light = null;
  }
  if (light === "day" || light === "dim" || light === "red") {
    document.documentElement.setAttribute("data-light", light);
  }
})();
