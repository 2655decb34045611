// Ticks are kept in this browser; without it the page works as it is.
try {
  const key = "coldfloor sheet " + location.pathname + " " + document.title;
  const boxes = [...document.querySelectorAll("input")];
  const kept = JSON.parse(localStorage.getItem(key) || "[]");
  boxes.forEach((b, i) => { b.checked = kept[i] === 1; });
  addEventListener("change", () => localStorage.setItem(key, JSON.stringify(boxes.map(b => b.checked ? 1 : 0))));
} catch (e) {}
