// The night's page: cursors over its two pictures, field mode that is remembered, a copy for where there is no signal.

const MINUS = "\u2212";

/** A figure as the service says it: halves go away from zero, trailing zeros are left out. */
function say(value, { scale, offset, decimals, suffix }) {
  if (value === null || value === undefined) return "unknown";
  const power = 10 ** decimals;
  const said = value * scale + offset;
  const rounded = (Math.sign(said) * Math.round(Math.abs(said) * power)) / power;
  return String(rounded + 0).replace("-", MINUS) + suffix;
}

function dataOf(id) {
  const element = document.getElementById(id);
  return element ? JSON.parse(element.textContent) : null;
}

/** Ties a slider to a picture: keys by the slider itself, mouse and touch by both. */
function bind(figure, indexAt, show) {
  const slider = figure.querySelector(".slider");
  const picture = figure.querySelector(".picture");
  const move = (index) => {
    const last = Number(slider.max);
    slider.value = Math.min(last, Math.max(0, index));
    show(Number(slider.value), slider);
  };
  slider.addEventListener("input", () => show(Number(slider.value), slider));
  slider.addEventListener("keydown", (event) => {
    const leap = { PageUp: 12, PageDown: -12 }[event.key];
    if (!leap) return;
    event.preventDefault();
    move(Number(slider.value) + leap);
  });
  const point = (event) => {
    const box = picture.getBoundingClientRect();
    move(indexAt((event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height));
  };
  picture.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    picture.setPointerCapture(event.pointerId);
    point(event);
  });
  picture.addEventListener("pointermove", (event) => {
    if (event.pointerType === "mouse" ? event.buttons === 1 : picture.hasPointerCapture(event.pointerId)) point(event);
  });
  show(Number(slider.value), slider);
  figure.classList.add("live");
}

function nightCursor() {
  const figure = document.getElementById("night-chart");
  const grid = dataOf("night-grid");
  if (!figure || !grid) return;
  const cursor = figure.querySelector(".cursor");
  const line = cursor.querySelector("line");
  const time = figure.querySelector(".at");
  const figures = [...figure.querySelectorAll(".readout dd")];
  const width = cursor.viewBox.baseVal.width;
  const [left, right] = [Number(cursor.dataset.left), Number(cursor.dataset.right)];
  const last = grid.clock.length - 1;
  bind(
    figure,
    (across) => Math.round(((across * width - left) / (right - left)) * last),
    (step, slider) => {
      const x = left + ((right - left) * step) / Math.max(1, last);
      line.setAttribute("x1", x);
      line.setAttribute("x2", x);
      time.textContent = grid.clock[step];
      const spoken = [];
      grid.readings.forEach((reading, i) => {
        const text = say(reading.values?.[step], reading);
        figures[i].textContent = text;
        if (reading.key) spoken.push(`${reading.name} ${text}`);
      });
      slider.setAttribute("aria-valuetext", `${grid.clock[step]}: ${spoken.join(", ")}`);
    });
}

function frameSlider() {
  const figure = document.getElementById("frame-chart");
  const path = dataOf("frame-path");
  if (!figure || !path) return;
  const cursor = figure.querySelector(".cursor");
  const circle = cursor.querySelector("circle");
  const says = figure.querySelector(".at");
  const { width, height } = cursor.viewBox.baseVal;
  const away = (mark, x, y) => (mark.x === null ? Infinity : (mark.x - x) ** 2 + (mark.y - y) ** 2);
  bind(
    figure,
    (across, down) => {
      const nearest = path.reduce((best, mark, i) => (away(mark, across * width, down * height) < away(path[best], across * width, down * height) ? i : best), 0);
      return nearest;
    },
    (index, slider) => {
      const mark = path[index];
      circle.setAttribute("cx", mark.x ?? -99);
      circle.setAttribute("cy", mark.y ?? -99);
      says.textContent = mark.says;
      slider.setAttribute("aria-valuetext", mark.says);
    });
}

function fieldMode() {
  const box = document.getElementById("field-mode");
  if (!box) return;
  const remembered = document.documentElement.classList.contains("field");
  box.checked = remembered || box.checked;
  document.documentElement.classList.toggle("field", box.checked);
  box.addEventListener("change", () => {
    document.documentElement.classList.toggle("field", box.checked);
    try {
      if (box.checked) localStorage.setItem("field", "1");
      else localStorage.removeItem("field");
    } catch {
      // Storage may be off; the box still works for this page.
    }
  });
}

/** A page that was kept, or left open, says how old it is. */
function copyAge() {
  const night = document.getElementById("night");
  const note = document.getElementById("copy-age");
  if (!night || !note) return;
  const show = () => {
    const minutes = Math.round((Date.now() - Date.parse(night.dataset.written)) / 60000);
    if (Math.abs(minutes) < 20) return;
    const age = minutes < 120 ? `${minutes} minutes` : `${Math.floor(minutes / 60)} hours`;
    note.textContent = `This copy is ${age} old. Load it again where there is a signal: the forecast may have changed.`;
    note.hidden = minutes < 0;
  };
  show();
  setInterval(show, 60000);
}

/** Keeps this page and its files for the field. */
async function keepForTheField() {
  const worker = document.getElementById("night")?.dataset.worker;
  if (!worker || !("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(worker, { scope: worker.replace(/[^/]*$/, "watches/") });
    await navigator.serviceWorker.ready;
    const files = [...document.querySelectorAll('link[rel="stylesheet"], link[rel="icon"], script[src], img[src]')].map((element) => element.href || element.src);
    (registration.active ?? navigator.serviceWorker.controller)?.postMessage({ keep: location.href.split("#")[0], files });
  } catch {
    // No worker, no copy: the page is as good as before.
  }
}

fieldMode();
nightCursor();
frameSlider();
copyAge();
keepForTheField();
