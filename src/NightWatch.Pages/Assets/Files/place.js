// Puts the device's own position into the place field. Without script the field is typed.
const button = document.querySelector("[data-locate]");
const field = document.getElementById("f-place");
const says = document.querySelector("[data-locate-says]");
if (button && field && "geolocation" in navigator) {
  button.hidden = false;
  button.addEventListener("click", () => {
    says.textContent = "";
    button.disabled = true;
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        button.disabled = false;
        field.value = `${coords.latitude.toFixed(5)}, ${coords.longitude.toFixed(5)}`;
        field.form.requestSubmit();
      },
      () => {
        button.disabled = false;
        says.textContent = "The device does not tell where it is. Type the place instead.";
      },
      { enableHighAccuracy: true, timeout: 15000, maximumAge: 600000 },
    );
  });
}
