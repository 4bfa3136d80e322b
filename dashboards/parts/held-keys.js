// A key that is held presses a button, or sends a form, once.

addEventListener(
  "keydown",
  (event) => {
    if (event.repeat && event.key === "Enter" && !event.target.closest("textarea")) event.preventDefault();
  },
  true,
);
