/** `npm run bench`: prints figures, asserts none. */
import { benchDemos } from "./demos.ts";

benchDemos();
