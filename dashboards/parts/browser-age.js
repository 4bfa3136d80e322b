// Tells a browser that is too old for these pages that it is; in the syntax of old ones.
(function () {
  function supports(condition) {
    return window.CSS && CSS.supports && CSS.supports(condition);
  }
  if (
    "popover" in HTMLElement.prototype &&
    Array.prototype.at &&
    supports("selector(:has(a))") &&
    supports("(container-type: inline-size)") &&
    supports("(height: 1dvh)")
  )
    return;
  document.addEventListener("DOMContentLoaded", function () {
    var line = document.createElement("p");
    line.className = "stale";
    line.setAttribute("role", "alert");
    line.textContent =
      "This browser is too old for these pages, and parts of them don’t work. " +
      "Take one of mid-2024 or newer, here or on another device.";
    document.body.insertBefore(line, document.body.firstChild);
  });
})();
