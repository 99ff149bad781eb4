// Requests to the server that this page came from; every change carries the header that only our own pages can set.

/** What the server refused, or could not be asked. `kind` is "refused", "shut" (no key) or "away" (no answer). */
export class Refusal extends Error {
  constructor(kind, message, status = 0) {
    super(message);
    this.kind = kind;
    this.status = status;
  }
}

/** The JSON at an address; null where it has not changed since `known` (an entity tag). */
export async function read(address, { known = null, signal } = {}) {
  const headers = known ? { "if-none-match": known } : {};
  const answer = await reach(address, { headers, signal });
  if (answer.status === 304) {
    return null;
  }
  return { ...(await contents(answer)), tag: answer.headers.get("etag") };
}

/** Send a change and give the server's answer. Throws a `Refusal`; nothing is kept where it does. */
export async function send(address, change) {
  const answer = await reach(address, {
    method: "POST",
    headers: { "content-type": "application/json", "spokeshave-page": "1" },
    body: JSON.stringify(change),
  });
  return contents(answer);
}

/** Send bytes and give the server's answer. Throws a `Refusal` as `send` does. */
export async function sendBytes(address, bytes, patience = 20000) {
  const answer = await reach(address, {
    method: "POST",
    headers: { "content-type": "application/octet-stream", "spokeshave-page": "1" },
    body: bytes,
    signal: AbortSignal.timeout(patience),
  });
  return contents(answer);
}

async function reach(address, options) {
  try {
    return await fetch(address, { ...options, cache: "no-store", credentials: "same-origin" });
  } catch (error) {
    if (error.name === "AbortError") {
      throw error;
    }
    throw new Refusal("away", "the server does not answer");
  }
}

async function contents(answer) {
  if (answer.status === 403) {
    throw new Refusal("shut", "the server was started anew", 403);
  }
  let told = {};
  try {
    told = await answer.json();
  } catch {
    throw new Refusal(answer.ok ? "away" : "refused", `the server gave no proper answer (${answer.status})`, answer.status);
  }
  if (!answer.ok) {
    throw new Refusal("refused", told.problem ?? `the server refused (${answer.status})`, answer.status);
  }
  return told;
}
