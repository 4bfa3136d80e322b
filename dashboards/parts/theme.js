// Runs before the first paint: the viewer's choice, else what the device asks for.
(() => {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const apply = () => {
    let chosen = null;
    try {
      chosen = localStorage.getItem("theme");
    } catch {
      /* storage may be barred */
    }
    document.documentElement.dataset.theme =
      chosen === "light" || chosen === "dark" ? chosen : dark.matches ? "dark" : "light";
  };
  apply();
  dark.addEventListener("change", apply);
  addEventListener("storage", apply);
  document.addEventListener("viewer", apply);
})();
