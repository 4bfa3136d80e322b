// Runs before the first paint: the viewer's choice, else what the device asks for; few colours are the device's.
(() => {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const few = matchMedia("(forced-colors: active)");
  const apply = () => {
    let chosen = null;
    try {
      if (!few.matches) chosen = localStorage.getItem("theme");
    } catch {
      /* storage may be barred */
    }
    document.documentElement.dataset.theme =
      chosen === "light" || chosen === "dark" ? chosen : dark.matches ? "dark" : "light";
  };
  apply();
  dark.addEventListener("change", apply);
  few.addEventListener("change", apply);
  addEventListener("storage", apply);
  document.addEventListener("viewer", apply);
})();
