// What the browser keeps (IndexedDB) until the server has it on the disk: it outlives a server or a browser that is killed.

const NAME = "spokeshave-record";

/** The reserve of this browser. Where the browser has none (a private window), everything goes on without. */
export class Reserve {
  /** Open it. */
  static async open() {
    const reserve = new Reserve();
    try {
      const opening = indexedDB.open(NAME, 1);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore("takes", { keyPath: "slug" });
        opening.result.createObjectStore("pieces", { keyPath: ["slug", "number"] });
      };
      reserve.base = await answer(opening);
    } catch {
      reserve.base = null;
    }
    return reserve;
  }

  /** True where it keeps anything. */
  get works() {
    return this.base !== null;
  }

  /** Keep what is known of a recording: its folder's name, title and marks. */
  keepTake(take) {
    return this.change(["takes"], (stores) => stores.takes.put(take));
  }

  /** Keep a piece. */
  keepPiece(slug, piece) {
    return this.change(["pieces"], (stores) => stores.pieces.put({ slug, ...piece }));
  }

  /** Drop the pieces before `next`: the server has them. */
  dropPieces(slug, next) {
    return this.change(["pieces"], (stores) => stores.pieces.delete(IDBKeyRange.bound([slug, 0], [slug, next], false, true)));
  }

  /** Drop a recording with all its pieces. */
  dropTake(slug) {
    return this.change(["takes", "pieces"], (stores) => {
      stores.takes.delete(slug);
      stores.pieces.delete(IDBKeyRange.bound([slug, 0], [slug, Infinity]));
    });
  }

  /** The recordings in reserve, each with its pieces in order. */
  async takes() {
    if (!this.works) {
      return [];
    }
    const asked = this.base.transaction(["takes", "pieces"]);
    const [takes, pieces] = await Promise.all(["takes", "pieces"].map((one) => answer(asked.objectStore(one).getAll())));
    return takes.map((take) => ({ ...take, pieces: pieces.filter((piece) => piece.slug === take.slug) }));
  }

  change(names, act) {
    if (!this.works) {
      return Promise.resolve();
    }
    const transaction = this.base.transaction(names, "readwrite");
    act(Object.fromEntries(names.map((name) => [name, transaction.objectStore(name)])));
    return new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onerror = transaction.onabort = () => reject(transaction.error);
    });
  }
}

function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
