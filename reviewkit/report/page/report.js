// Plays the second that was clicked, from whichever clip of the round holds it.
const player = document.querySelector(".player");
if (player) {
  const video = player.querySelector("video");
  const status = player.querySelector("[role=status]");
  const clips = JSON.parse(video.dataset.clips);
  let from = null;

  const play = (seconds) => {
    const clip = clips.find((one) => seconds < one.end) ?? clips.at(-1);
    const start = () => {
      video.currentTime = Math.max(0, seconds - clip.start + clip.in);
      video.play().catch(() => {});
    };
    player.hidden = false;
    status.textContent = "";
    if (video.getAttribute("src") === clip.url) return start();
    video.src = clip.url;
    video.addEventListener("loadedmetadata", start, { once: true });
    video.load();
  };

  document.addEventListener("click", (event) => {
    const spot = event.target.closest("[data-at]");
    if (!spot) return;
    from = spot;
    play(Number(spot.dataset.at));
  });
  const close = () => {
    video.pause();
    player.hidden = true;
    from?.focus?.();
  };
  player.querySelector("button").addEventListener("click", close);
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !player.hidden) close();
  });
  video.addEventListener("error", () => {
    status.textContent = "This footage cannot be played here. The desk makes a copy that can: reviewkit desk.";
  });
}
