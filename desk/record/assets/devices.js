// The microphone and the camera, as the browser lends them.

// What the microphone hears, not what a telephone would make of it: a plane on spruce is no noise to be taken out.
const PLAIN_SOUND = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };

/** Open a microphone, and a camera unless it is "none". Throws an Error whose message a person can act on. */
export async function openInputs(microphone, camera) {
  if (!navigator.mediaDevices?.getUserMedia || !window.MediaRecorder) {
    throw new Error("This browser can’t record. Open the address in another one, or use spokeshave record --mic.");
  }
  const audio = microphone ? { ...PLAIN_SOUND, deviceId: { exact: microphone } } : PLAIN_SOUND;
  const size = { width: { ideal: 1280 }, height: { ideal: 720 }, frameRate: { ideal: 25 } };
  const video = camera === "none" ? false : camera ? { ...size, deviceId: { exact: camera } } : size;
  try {
    return await navigator.mediaDevices.getUserMedia({ audio, video });
  } catch (error) {
    throw new Error(why(error, camera !== "none"));
  }
}

/** Let go of what was opened. */
export function closeInputs(stream) {
  stream?.getTracks().forEach((track) => track.stop());
}

/** True where the browser has the person's leave already. */
export async function hasLeave() {
  try {
    return (await navigator.permissions.query({ name: "microphone" })).state === "granted";
  } catch {
    return false;
  }
}

/** Fill the two lists with what there is, and keep what was chosen. */
export async function listInputs(microphones, cameras) {
  const devices = await navigator.mediaDevices.enumerateDevices();
  offer(microphones, devices.filter((one) => one.kind === "audioinput"), "microphone");
  offer(cameras, devices.filter((one) => one.kind === "videoinput"), "camera");
}

function offer(list, devices, what) {
  const chosen = list.value;
  const named = devices.filter((one) => one.deviceId && one.deviceId !== "default" && one.deviceId !== "communications");
  list.replaceChildren(list.options[0], ...named.map((one, at) => new Option(one.label || `${what} ${at + 1}`, one.deviceId)));
  list.value = [...list.options].some((one) => one.value === chosen) ? chosen : list.options[0].value;
}

function why(error, camera) {
  const what = camera ? "microphone and camera" : "microphone";
  switch (error.name) {
    case "NotAllowedError":
      return `The browser was not allowed to use the ${what}. Allow it beside the address, then try again.`;
    case "NotFoundError":
    case "OverconstrainedError":
      return `There is no such ${what}. Plug it in or choose another, then try again.`;
    case "NotReadableError":
      return `Another program holds the ${what}. Close that program, then try again.`;
    default:
      return `The ${what} can’t be opened (${error.message || error.name}). Choose another, then try again.`;
  }
}
