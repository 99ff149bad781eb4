// The capture page: prepare, record, end, write up.

import { read, send } from "/assets/ask.js";
import { tell } from "/assets/tell.js";
import { sendReserve, showCutOff } from "./cut_off.js";
import { closeInputs, hasLeave, listInputs, openInputs } from "./devices.js";
import { listenToKeys } from "./keys.js";
import { Meter } from "./level.js";
import { Marks } from "./marks.js";
import { Reserve } from "./reserve.js";
import { Session } from "./session.js";
import { writeUp } from "./writing.js";

const LOCK = "spokeshave-recording";
const LOOK = 3000;

const at = (name) => document.getElementById(name);
const facts = JSON.parse(at("record").dataset.facts);
const meter = new Meter(document.querySelector(".level"), facts.bounds, facts.words);
const reserve = await Reserve.open();
let stream = null;
let session = null;

function say(words, well = false) {
  const place = at("trouble");
  place.hidden = !words;
  place.classList.toggle("well", well);
  if (place.textContent !== words) {
    place.textContent = words;
  }
}

// Microphone and camera.

async function open() {
  try {
    const fresh = await openInputs(at("microphone").value, at("camera").value);
    closeInputs(stream);
    stream = fresh;
  } catch (error) {
    say(error.message);
    return;
  }
  say("");
  await listInputs(at("microphone"), at("camera"));
  const film = stream.getVideoTracks().length > 0;
  at("view").srcObject = film ? stream : null;
  at("view").hidden = !film;
  if (film) {
    at("view").play();
  }
  at("open").hidden = true;
  at("desk").hidden = false;
  await meter.watch(stream);
  await look();
}

async function look() {
  let standing = null;
  try {
    standing = await read("/record/standing");
  } catch (error) {
    say(awayLine(error));
    return;
  }
  if (session) {
    return;
  }
  const room = standing.room[at("view").hidden ? "sound" : "film"];
  const hours = room.minutes / 60;
  at("room").textContent = room.line || `Room on the disk for about ${hours < 100 ? Math.floor(hours) : "100"} hours${hours < 100 ? "" : " and more"}.`;
  at("start").disabled = room.state === "none";
  showCutOff(standing.cut_off, ended, look);
}

function awayLine(error) {
  const again = `Start it again in a terminal: ${facts.command}`;
  return error.kind === "shut"
    ? "The server was started anew. Open the address that it printed in this browser; this page then goes on by itself."
    : error.kind === "away" ? `The server does not answer. ${again}` : `${error.message}`;
}

// The recording.

async function start() {
  at("start").disabled = true;
  const marks = new Marks(at("marks"));
  const begun = new Session(stream, reserve, marks, facts.largest);
  const told = { title: at("title").value, subject: at("subject").value, trade: at("trade").value };
  let release = null;
  navigator.locks.request(LOCK, () => new Promise((resolve) => (release = resolve)));
  try {
    await begun.begin(told);
  } catch (error) {
    release?.();
    at("start").disabled = false;
    say(error.kind ? awayLine(error) : String(error.message));
    return;
  }
  session = begun;
  session.addEventListener("show", show);
  session.addEventListener("ended", ({ detail }) => {
    release?.();
    closeInputs(stream);
    meter.leave();
    ended(detail);
  });
  at("prepare").hidden = at("cut-off").hidden = true;
  at("heading").textContent = session.title;
  show();
  keepAwake();
}

function show() {
  const { state } = session;
  document.body.className = state;
  at("standing").textContent = { recording: "Recording", paused: "Paused", ending: "Ending" }[state];
  at("start").hidden = true;
  at("pause").hidden = state !== "recording";
  at("resume").hidden = state !== "paused";
  at("mark").hidden = at("stop").hidden = state === "ending";
  at("still").hidden = at("view").hidden || state === "ending";
  at("clock").textContent = session.clock;
  at("kept").textContent = session.keptLine;
  at("room").textContent = session.room?.line ?? "";
  if (session.problem) {
    say(session.problem.kind ? `${awayLine(session.problem)} ${session.reserveLine}` : session.problem.message);
  } else {
    say(session.room?.line ?? "", session.room?.state === "short");
  }
}

async function press(act, words) {
  await act();
  show();
  tell(words);
}

function ended(told) {
  at("prepare").hidden = at("desk").hidden = at("cut-off").hidden = at("marks").hidden = true;
  document.body.className = "ended";
  session = session ?? { state: "ended" };
  at("after").hidden = false;
  at("write").hidden = at("after-command-line").hidden = told.nothing;
  at("after-line").textContent = told.nothing
    ? "Nothing was recorded, so nothing was kept."
    : `${told.length}, in sessions/${told.slug}. ${told.note}`;
  at("after-command").textContent = told.command;
  at("write").addEventListener("click", () => {
    at("write").disabled = true;
    writeUp(told.slug).then((state) => {
      at("write")?.toggleAttribute("disabled", state !== "failed");
    });
  });
  at("after").focus();
}

// A screen that goes dark takes the microphone of a tablet with it.
async function keepAwake() {
  try {
    await navigator.wakeLock?.request("screen");
  } catch {
    // Without, all goes on; the machine's own setting decides.
  }
}

function wire() {
  at("open").addEventListener("click", open);
  for (const list of ["microphone", "camera"]) {
    at(list).addEventListener("change", open);
  }
  at("prepare").addEventListener("submit", (event) => event.preventDefault());
  at("start").addEventListener("click", start);
  at("pause").addEventListener("click", () => press(() => session.pause(), "Paused."));
  at("resume").addEventListener("click", () => press(() => session.resume(), "Recording again."));
  at("mark").addEventListener("click", () => session.mark());
  at("still").addEventListener("click", () => session.still(at("view")));
  at("stop").addEventListener("click", () => at("ending").showModal());
  at("end-no").addEventListener("click", () => at("ending").close());
  at("end-yes").addEventListener("click", () => {
    at("ending").close();
    session.end();
  });
  at("help").addEventListener("click", () => at("keys").showModal());
  listenToKeys(
    { r: ["start"], p: ["pause", "resume"], m: ["mark"], s: ["still"], e: ["end-yes", "stop"] },
    "help",
  );
  window.addEventListener("beforeunload", (event) => {
    if (["recording", "paused", "ending"].includes(session?.state)) {
      event.preventDefault();
    }
  });
  document.addEventListener("visibilitychange", () => session && !document.hidden && keepAwake());
}

async function begin() {
  const held = (await navigator.locks.query()).held.some((lock) => lock.name === LOCK);
  at("prepare").hidden = held;
  if (held) {
    say("A recording is going on in another tab or window of this browser. Go on there.");
    at("desk").hidden = true;
    setTimeout(begin, LOOK);
    return;
  }
  say("");
  const lines = await sendReserve(reserve, facts.largest, (error) => say(awayLine(error)));
  say(lines.join(" "));
  await look();
  setInterval(() => !session && !document.hidden && look(), LOOK);
  if (await hasLeave()) {
    await open();
  }
}

wire();
await begin();
