import type { PathData } from "../../geometry/types.ts";
import { changePath } from "./change-path.ts";
import type { Edit } from "./edit.ts";
import type { PathRef } from "./path-ref.ts";

/** Puts a whole path in the place of another, as when a side is given a typed length or a rectangle a typed size. */
export function setPath(id: string, ref: PathRef, path: PathData, verb = "Reshape"): Edit {
  return changePath(verb, id, ref, () => path);
}
