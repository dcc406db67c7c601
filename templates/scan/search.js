"use strict";
addEventListener("input", (event) => {
  if (event.target.name !== "q") return;
  const typed = event.target.value.trim().toUpperCase();
  for (const each of document.querySelectorAll("[data-find] li")) {
    each.hidden = !each.textContent.toUpperCase().includes(typed);
  }
  for (const each of document.querySelectorAll("details[data-find]")) each.open = typed !== "";
});
