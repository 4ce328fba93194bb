// One hole: its row of the card and its strokes, every field editable where it stands.
import { clock, part, refill, scoreOf } from "./parts.js";

const COLUMNS = [
  ["kind", "Kind"],
  ["club", "Club"],
  ["lie", "From"],
  ["distance_yd", "Distance"],
  ["result", "To"],
  ["miss", "Miss"],
  ["contact", "Contact"],
  ["penalty_strokes", "Penalty"],
];
const HOLE = [["hole", "Hole"], ["par", "Par"], ["strokes", "Score"], ["putts", "Putts"], ["start_s", "Begins at, s"]];

export class Strokes {
  constructor(box, card, desk) {
    this.box = box;
    this.card = card;
    this.desk = desk;
  }

  show(state, chosen) {
    this.choices = state.choices;
    refill(this.card, part("ol", { class: "card" }, state.holes.map((hole) => this.cardHole(hole, chosen))));
    const place = state.holes.findIndex((one) => one.hole === chosen);
    const hole = state.holes[place];
    if (!hole) return refill(this.box, part("p", {}, "No hole is chosen."));
    return refill(
      this.box,
      this.head(hole),
      part(
        "div",
        { class: "table" },
        part(
          "table",
          {},
          part("caption", { class: "hidden-words" }, `Strokes on hole ${hole.hole}`),
          part("thead", {}, part("tr", {}, part("th", { scope: "col" }, "Stroke"), COLUMNS.map(([, label]) => part("th", { scope: "col" }, label)), part("th", { scope: "col" }, "Words"), part("th", { scope: "col" }, "Change"))),
          part("tbody", {}, hole.shots.map((shot, index) => this.row(hole, shot, index))),
        ),
      ),
      this.adding(hole),
      this.teaching(),
    );
  }

  cardHole(hole, chosen) {
    return part(
      "li",
      { class: hole.status === "check" ? "unsure" : null },
      part(
        "button",
        {
          type: "button",
          "data-key": `card-${hole.hole}`,
          "aria-current": hole.hole === chosen ? "true" : null,
          "aria-label": `Hole ${hole.hole}, ${hole.strokes || "no score"} ${hole.name}, ${hole.running} in all${hole.status === "check" ? ", to check" : ""}`,
          onclick: () => this.desk.choose(hole.hole, hole.start_s),
        },
        part("small", {}, String(hole.hole)),
        scoreOf(hole),
        part("small", { class: "running" }, hole.running),
      ),
    );
  }

  head(hole) {
    const accept = () => this.desk.act({ action: "accept", hole: hole.hole, stroke: null, field: "" });
    const drop = () => this.desk.act({ action: "delete", hole: hole.hole, stroke: null });
    return part(
      "header",
      { class: "hole-head" },
      part("h2", {}, `Hole ${hole.hole} `, part("span", { class: "quiet" }, `${hole.name} ${hole.status === "check" ? "to check" : ""}`)),
      part(
        "p",
        { class: "hole-fields" },
        HOLE.map(([field, label]) =>
          part("label", {}, part("span", {}, label), this.input(hole, null, field, field === "start_s" ? hole.start_s.toFixed(1) : String(hole[field]))),
        ),
        part("button", { type: "button", class: "yes", "data-key": "accept-hole", onclick: accept }, "Hole is right"),
        part("button", { type: "button", "data-key": "delete-hole", onclick: drop }, "No such hole"),
      ),
    );
  }

  row(hole, shot, index) {
    const about = `stroke ${shot.stroke}`;
    const key = `${hole.hole}.${index}`;
    const button = (name, label, act) => part("button", { type: "button", "data-key": `${key}-${name}`, "aria-label": `${label} ${about}`, title: label, onclick: act }, SIGNS[name]);
    const move = (place) => this.desk.act({ action: "move", hole: hole.hole, stroke: shot.stroke, to_hole: hole.hole, place });
    return part(
      "tr",
      { class: shot.told ? null : "inferred" },
      part("th", { scope: "row" }, String(shot.stroke), shot.told ? null : part("span", { class: "guess" }, "inferred")),
      COLUMNS.map(([field, label]) => part("td", { "data-label": label }, this.field(hole, shot, index, field, label))),
      part("td", { class: "words" }, part("span", { class: "said" }, shot.words)),
      part(
        "td",
        { class: "change" },
        button("play", "Play", () => this.desk.play(shot.start_s)),
        button("up", "Move up", () => move(Math.max(index, 1))),
        button("down", "Move down", () => move(index + 2)),
        button("drop", "Delete", () => this.desk.act({ action: "delete", hole: hole.hole, stroke: shot.stroke })),
      ),
    );
  }

  field(hole, shot, index, field, label) {
    const value = shot[field];
    const traits = { "data-key": `${hole.hole}.${index}-${field}`, "data-field": field, "aria-label": `${label} of stroke ${shot.stroke}` };
    const set = (text) => this.desk.act({ action: "set", hole: hole.hole, stroke: shot.stroke, field, value: text });
    const shown = field === "distance_yd" ? lengthOf(shot) : value;
    const options = this.choices[field];
    if (!options) {
      return part("input", { ...traits, value: shown, size: 5, inputmode: field === "distance_yd" ? "text" : "numeric", onchange: (event) => set(event.target.value) });
    }
    const empty = field === "kind" ? [] : [""];
    const known = [...empty, ...options.filter((option) => option !== "unknown")];
    const list = part("select", { ...traits, onchange: (event) => set(event.target.value) }, known.map((option) => part("option", { value: option }, option || "–")));
    list.value = value;
    return list;
  }

  input(hole, stroke, field, value) {
    const set = (event) => this.desk.act({ action: "set", hole: hole.hole, stroke, field, value: event.target.value }, field === "hole" ? Number(event.target.value) : undefined);
    return part("input", { "data-key": `hole-${field}`, "data-field": field, value, size: 4, inputmode: "decimal", onchange: set });
  }

  adding(hole) {
    const kind = part("select", { "data-key": "add-kind", "aria-label": "Kind of the new stroke" }, this.choices.kind.map((option) => part("option", { value: option }, option)));
    kind.value = "putt";
    const where = part(
      "select",
      { "data-key": "add-where", "aria-label": "Where the new stroke goes" },
      part("option", { value: "1" }, "first"),
      hole.shots.map((shot) => part("option", { value: String(shot.stroke + 1 + Number(shot.penalty_strokes || 0)) }, `after stroke ${shot.stroke}`)),
    );
    where.selectedIndex = where.options.length - 1;
    const add = () => this.desk.act({ action: "add", hole: hole.hole, stroke: Number(where.value), columns: { kind: kind.value } });
    return part("p", { class: "adding" }, "Add a ", kind, " ", where, " ", part("button", { type: "button", "data-key": "add", onclick: add }, "Add stroke"));
  }

  teaching() {
    const heard = part("input", { "data-key": "heard", "aria-label": "Words as heard", placeholder: "as heard", size: 12 });
    const meant = part("input", { "data-key": "meant", "aria-label": "Words as meant", placeholder: "as meant", size: 12 });
    const take = () => {
      const picked = String(getSelection()).trim();
      if (picked && picked.length < 60) heard.value = picked;
    };
    this.box.onmouseup = take;
    return part(
      "form",
      { class: "teaching", onsubmit: (event) => { event.preventDefault(); this.desk.teach(heard.value, meant.value); } },
      "Always read ", heard, " as ", meant, " ",
      part("button", { "data-key": "teach" }, "Teach"),
    );
  }
}

/** Yards as a number, feet for putts as golfers say them; both can be typed back, and metres as 119m. */
const lengthOf = (shot) => {
  if (shot.distance_yd === "" || shot.kind !== "putt") return shot.distance_yd;
  return `${Math.round(Number(shot.distance_yd) * 30) / 10}ft`;
};

const SIGNS = { play: "▶", up: "↑", down: "↓", drop: "✕" };
