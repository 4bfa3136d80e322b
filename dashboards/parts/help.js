// The help: pages of the handbook, made by the service; here only the frame is put around them.

import { frame } from "./frame.js";

frame("help", { care: false });
// Tables wider than a phone are moved in their own box.
for (const [i, table] of document.querySelectorAll("article table").entries()) {
  const box = document.createElement("div");
  box.className = "table";
  box.tabIndex = 0;
  box.setAttribute("role", "region");
  box.setAttribute("aria-label", `Table ${i + 1}`);
  table.replaceWith(box);
  box.append(table);
}
for (const code of document.querySelectorAll("article pre")) code.tabIndex = 0;
