"use strict";
addEventListener("input", (event) => {
  if (event.target.name !== "q") return;
  const typed = event.target.value.trim().toUpperCase();
  for (const each of document.querySelectorAll("[data-find] li")) {
    each.hidden = !each.textContent.toUpperCase().includes(typed);
  }
  for (const each of document.querySelectorAll("details[data-find]")) each.open = typed !== "";
});

// A photo is made small before it is sent: no wait in the garage, and none is too large. What the
// phone cannot draw is sent as it is, and the server says what it takes.
addEventListener("change", async (event) => {
  const input = event.target;
  if (input.type !== "file" || !input.files.length) return;
  const picture = await createImageBitmap(input.files[0]).catch(() => null);
  const side = 1600;
  if (!picture || Math.max(picture.width, picture.height) <= side) return;
  const scale = side / Math.max(picture.width, picture.height);
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  canvas.toBlob((small) => {
    const sent = new DataTransfer();
    sent.items.add(new File([small], "photo.jpg", { type: small.type }));
    input.files = sent.files;
  }, "image/jpeg", 0.85);
});
