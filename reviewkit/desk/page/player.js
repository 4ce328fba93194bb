// The footage: one video over all clips of the round's timeline.
import { part } from "./parts.js";

export class Player {
  constructor(box, askForCopy) {
    this.box = box;
    this.askForCopy = askForCopy;
    this.media = [];
    this.wanted = 0;
    this.video = part("video", { controls: true, playsinline: true, preload: "metadata", "aria-label": "Footage" });
    this.note = part("p", { class: "quiet" });
    box.append(this.video, this.note);
    this.video.addEventListener("error", () => this.offerCopy("This browser cannot play the footage."));
    this.video.addEventListener("ended", () => this.next());
  }

  show(state) {
    const first = this.media.length === 0;
    const before = this.clip;
    this.media = state.media;
    this.copying = state.copying ?? {};
    this.complaints = state.copy_complaints ?? {};
    if (!this.media.some((one) => one.there)) {
      this.video.hidden = true;
      this.note.textContent = this.media.length
        ? "The footage is not where it was read from; everything else works without it."
        : "This round was read from words alone; there is no footage to show.";
      return;
    }
    if (first) this.clip = this.media.find((one) => one.there);
    else this.clip = this.media[before?.index] ?? this.media[0];
    if (first || (this.clip.copied && !before?.copied)) this.load();
    else if (!this.clip.plays) this.offerCopy("");
  }

  load() {
    if (!this.clip.plays) return this.offerCopy("This kind of footage does not play in a browser.");
    this.note.replaceChildren();
    this.video.hidden = false;
    this.video.src = `media/${this.clip.index}${this.clip.copied ? "?copy" : ""}`;
    this.seek(this.wanted);
  }

  offerCopy(reason) {
    const index = this.clip?.index ?? 0;
    const share = this.copying?.[index];
    if (share !== undefined) {
      this.note.replaceChildren(
        "Making a copy that plays: ",
        part("progress", { max: 1, value: share, "aria-label": "Copy made" }),
        ` ${Math.round(share * 100)} %`,
      );
      return;
    }
    const why = this.complaints?.[index] || reason || "This kind of footage does not play in a browser.";
    const ask = part("button", { type: "button", onclick: () => this.askForCopy(index) }, "Make a copy that plays");
    this.note.replaceChildren(`${why} `, ask);
  }

  get now() {
    if (!this.clip || this.video.hidden) return this.wanted;
    return this.clip.start + this.video.currentTime - this.clip.in;
  }

  /** Go to a second of the round, in whichever clip holds it. */
  seek(seconds) {
    this.wanted = seconds;
    const clip = this.media.find((one) => seconds < one.end) ?? this.media.at(-1);
    if (!clip) return;
    if (clip !== this.clip) {
      this.clip = clip;
      return this.load();
    }
    const go = () => { this.video.currentTime = Math.max(0, seconds - clip.start + clip.in); };
    if (this.video.readyState >= 1) go();
    else this.video.addEventListener("loadedmetadata", go, { once: true });
  }

  next() {
    const following = this.media[(this.clip?.index ?? 0) + 1];
    if (!following) return;
    this.seek(following.start);
    this.video.play().catch(() => {});
  }

  toggle() {
    if (this.video.paused) this.video.play().catch(() => {});
    else this.video.pause();
  }
}
