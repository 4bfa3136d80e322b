// Paper is light, whatever the screen is; what is folded is printed open.

const root = document.documentElement;
let before = null;

addEventListener("beforeprint", () => {
  before = { theme: root.dataset.theme, folded: [...document.querySelectorAll("details:not([open])")] };
  root.dataset.theme = "light";
  before.folded.forEach((each) => {
    each.open = true;
  });
});
addEventListener("afterprint", () => {
  root.dataset.theme = before.theme;
  before.folded.forEach((each) => {
    each.open = false;
  });
});
