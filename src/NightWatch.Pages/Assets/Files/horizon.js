// Points of a skyline, dragged on the strip or typed in the table: two views of the same rows.
const form = document.querySelector("form[data-horizon]");
const strip = document.querySelector("[data-horizon-strip]");
const rows = document.querySelector("[data-horizon-rows]");
const dots = document.querySelector("[data-horizon-points]");
const land = document.querySelector("[data-horizon-land]");
const svgNs = "http://www.w3.org/2000/svg";

const number = (text) => (text.trim() === "" ? NaN : Number(text.trim().replace(",", ".").replace("\u2212", "-")));
const x = (azimuth) => 12 + azimuth * 2;
const y = (altitude) => Math.min(188, Math.max(8, 178 - altitude * 3.4));

const points = () =>
  [...rows.rows]
    .map((row) => {
      const [azimuth, altitude] = [...row.querySelectorAll("input")];
      return { row, azimuth: number(azimuth.value), altitude: number(altitude.value) };
    })
    .filter((p) => p.azimuth >= 0 && p.azimuth < 360 && p.altitude >= -5 && p.altitude <= 90)
    .sort((a, b) => a.azimuth - b.azimuth);

const altitudeAt = (all, azimuth) => {
  if (all.length === 0) return 0;
  const after = all.findIndex((p) => p.azimuth > azimuth);
  const high = all[after < 0 ? 0 : after];
  const low = all[(after < 0 ? all.length : after) - 1] ?? all[all.length - 1];
  const width = (high.azimuth - low.azimuth + 360) % 360 || 360;
  const share = ((azimuth - low.azimuth + 360) % 360) / width;
  return low.altitude + share * (high.altitude - low.altitude);
};

const draw = () => {
  const all = points();
  let path = "M12 188";
  for (let azimuth = 0; azimuth <= 360; azimuth += 1) path += `L${x(azimuth)} ${y(altitudeAt(all, azimuth % 360)).toFixed(1)}`;
  land.setAttribute("d", `${path}L732 188Z`);
  dots.replaceChildren(
    ...all.map((p) => {
      const dot = document.createElementNS(svgNs, "circle");
      dot.setAttribute("class", "strip-point");
      dot.setAttribute("cx", x(p.azimuth));
      dot.setAttribute("cy", y(p.altitude));
      dot.setAttribute("r", 8);
      dot.addEventListener("pointerdown", (event) => drag(event, p.row));
      return dot;
    }),
  );
};

const place = (event) => {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(strip.getScreenCTM().inverse());
  return {
    azimuth: Math.min(359.5, Math.max(0, Math.round(at.x - 12) / 2)),
    altitude: Math.min(49, Math.max(-3, Math.round(((178 - at.y) / 3.4) * 2) / 2)),
  };
};

const write = (row, { azimuth, altitude }) => {
  const [first, second] = row.querySelectorAll("input");
  first.value = azimuth;
  second.value = altitude;
};

const drag = (event, row) => {
  event.preventDefault();
  event.stopPropagation();
  const move = (moved) => { write(row, place(moved)); draw(); };
  const end = () => { removeEventListener("pointermove", move); removeEventListener("pointerup", end); removeEventListener("pointercancel", end); };
  addEventListener("pointermove", move);
  addEventListener("pointerup", end);
  addEventListener("pointercancel", end);
};

const emptyRow = () => {
  const free = [...rows.rows].find((row) => [...row.querySelectorAll("input")].every((input) => input.value.trim() === ""));
  if (free) return free;
  const row = rows.rows[rows.rows.length - 1].cloneNode(true);
  row.querySelectorAll("input").forEach((input, i) => {
    input.value = "";
    input.setAttribute("aria-label", `${i === 0 ? "Azimuth" : "Altitude"} of point ${rows.rows.length + 1}`);
  });
  rows.append(row);
  return row;
};

if (form && strip) {
  document.querySelector("[data-horizon-help]").hidden = false;
  strip.addEventListener("pointerdown", (event) => {
    const row = emptyRow();
    write(row, place(event));
    draw();
    drag(event, row);
  });
  rows.addEventListener("input", draw);
  draw();
}
