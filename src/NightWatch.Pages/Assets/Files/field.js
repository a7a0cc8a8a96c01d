// Before anything is painted, so that a page that opens in the dark never flashes white.
try {
  if (localStorage.getItem("field") === "1") document.documentElement.classList.add("field");
} catch {
  // Storage may be off.
}
