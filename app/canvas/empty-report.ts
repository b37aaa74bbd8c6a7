/** What is known before the first report has come: nothing. The sheet then shows what is drawn, and no findings or copper. */
import { type Outcome, REPORT_FORMAT, REPORT_VERSION, type Report } from "../../rules/report.ts";

const NO_COUNTS: Readonly<Record<Outcome, number>> = {
  bond: 0,
  exempt: 0,
  meets: 0,
  missing: 0,
  conflict: 0,
  review: 0,
};

export const EMPTY_REPORT: Report = {
  format: REPORT_FORMAT,
  version: REPORT_VERSION,
  site: "",
  edition: "",
  amendments: [],
  cautions: [],
  counts: NO_COUNTS,
  missing: 0,
  band: [],
  reach: [],
  findings: [],
  ring: { offset: 0, loops: [], length: 0, shortestLegal: 0, pending: true },
  methods: [],
  grid: { band: { length: 0, crossings: 0 }, shell: { length: 0, crossings: 0 } },
  ties: [],
  branches: [],
  takeoff: {
    conductor: { ring: 0, grid: 0, ties: 0, branches: 0, drops: 0, tails: 0, spare: 0, total: 0 },
    hardware: [],
    weightPounds: 0,
  },
};
