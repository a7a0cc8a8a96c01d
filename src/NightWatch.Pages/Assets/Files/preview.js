// Works the coming nights out again while the form is filled in. Without script a button does it.
const form = document.querySelector("form[data-preview]");
const matters = /^(place|site\.zone|subject\.|limits\.(minAltitudeDeg|usableRunMin)|site\.position)/;
let waiting, running;

const look = async () => {
  running?.abort();
  running = new AbortController();
  const data = new FormData(form);
  data.set("do", "look");
  try {
    const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(data), signal: running.signal });
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = page.getElementById(form.dataset.preview);
    const stale = document.getElementById(form.dataset.preview);
    if (fresh && stale) stale.replaceWith(document.importNode(fresh, true));
  } catch (failure) {
    if (failure.name !== "AbortError") throw failure;
  }
};

form?.addEventListener("change", (event) => {
  if (!matters.test(event.target.name ?? "")) return;
  clearTimeout(waiting);
  waiting = setTimeout(look, 300);
});
