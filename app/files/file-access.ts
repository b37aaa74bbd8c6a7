/**
 * The machine's files as the browser gives them: through its file pickers where it has them (then a site can be saved
 * to the same file again), else by a file field and a download.
 */

/** A file on the machine that can be written again. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<{ text(): Promise<string> }>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void>; abort?(): Promise<void> }>;
  queryPermission?(options: { mode: "read" | "readwrite" }): Promise<PermissionState>;
  requestPermission?(options: { mode: "readwrite" }): Promise<PermissionState>;
  isSameEntry?(other: FileHandle): Promise<boolean>;
}

export interface PickedFile {
  readonly name: string;
  readonly text: string;
  /** Null where the browser does not let it be written again. */
  readonly handle: FileHandle | null;
}

/** What Files needs of the machine. Methods reject with the browser's own error; a person's "cancel" is null. */
export interface FileAccess {
  /** Whether `pickToSave` exists here. */
  readonly canPickToSave: boolean;
  pickToOpen(): Promise<PickedFile | null>;
  pickToSave(name: string): Promise<FileHandle | null>;
  /** Asks for leave to write where that has to be asked for, and gives what the file holds now. */
  read(handle: FileHandle): Promise<string>;
  /** What the file holds now, where it may be read without asking; else null. */
  peek(handle: FileHandle): Promise<string | null>;
  write(handle: FileHandle, text: string): Promise<void>;
  download(name: string, text: string): void;
}

interface PickerWindow {
  showOpenFilePicker?(options: object): Promise<FileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileHandle>;
}

const SITE_FILES = [{ description: "Site file", accept: { "application/json": [".json"] } }];

/** The files of the browser that a page runs in. */
export function browserFiles(page: Window): FileAccess {
  const pickers = page as unknown as PickerWindow;
  return {
    get canPickToSave() {
      return typeof pickers.showSaveFilePicker === "function";
    },
    async pickToOpen() {
      if (typeof pickers.showOpenFilePicker !== "function") return pickByField(page.document);
      const handles = await unlessCancelled(pickers.showOpenFilePicker({ types: SITE_FILES }));
      const handle = handles?.[0];
      if (!handle) return null;
      const file = await handle.getFile();
      return { name: handle.name, text: await file.text(), handle };
    },
    async pickToSave(name) {
      if (typeof pickers.showSaveFilePicker !== "function") return null;
      return unlessCancelled(pickers.showSaveFilePicker({ suggestedName: name, types: SITE_FILES }));
    },
    async read(handle) {
      await permit(handle);
      return (await handle.getFile()).text();
    },
    async peek(handle) {
      if (handle.queryPermission && (await handle.queryPermission({ mode: "read" })) !== "granted") return null;
      return (await handle.getFile()).text();
    },
    write,
    download(name, text) {
      const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
      const link = page.document.createElement("a");
      link.href = address;
      link.download = name;
      link.click();
      page.setTimeout(() => URL.revokeObjectURL(address), 60_000);
    },
  };
}

async function permit(handle: FileHandle): Promise<void> {
  const mode = { mode: "readwrite" } as const;
  if (handle.queryPermission && (await handle.queryPermission(mode)) !== "granted") {
    const given = await handle.requestPermission?.(mode);
    if (given !== undefined && given !== "granted") {
      throw new DOMException("The browser was not allowed to write this file.", "NotAllowedError");
    }
  }
}

async function write(handle: FileHandle, text: string): Promise<void> {
  await permit(handle);
  const writable = await handle.createWritable();
  try {
    await writable.write(text);
  } catch (error) {
    await writable.abort?.();
    throw error;
  }
  await writable.close();
}

/** What was picked; null when the person closed the picker. */
async function unlessCancelled<T>(picked: Promise<T>): Promise<T | null> {
  try {
    return await picked;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return null;
    throw error;
  }
}

function pickByField(document: Document): Promise<PickedFile | null> {
  return new Promise((resolve, reject) => {
    const field = document.createElement("input");
    field.type = "file";
    field.accept = ".json,application/json";
    field.hidden = true;
    const finish = (picked: PickedFile | null) => {
      field.remove();
      resolve(picked);
    };
    field.addEventListener("cancel", () => finish(null));
    field.addEventListener("change", () => {
      const file = field.files?.[0];
      if (!file) finish(null);
      else file.text().then((text) => finish({ name: file.name, text, handle: null }), reject);
    });
    document.body.append(field);
    field.click();
  });
}
