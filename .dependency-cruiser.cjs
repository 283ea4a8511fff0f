/** The layer rules of the house as errors: an arrow may only point down. */
const room = (name) => `^src/${name}/`;
const forbid = (name, from, to, comment) => ({
  name,
  comment,
  severity: "error",
  from: { path: from },
  to: { path: to },
});
module.exports = {
  forbidden: [
    { name: "no-circular", severity: "error", from: {}, to: { circular: true } },
    forbid("units-knows-nothing", room("units"), "^src/(?!units/)", "units is the ground floor"),
    forbid("geometry-knows-nothing", room("geometry"), "^src/(?!geometry/)", "geometry is the ground floor"),
    forbid(
      "setup-knows-units",
      room("setup"),
      "^src/(?!setup/|units/)",
      "setup hands plain data to the rest",
    ),
    forbid(
      "suspension-looks-down",
      room("suspension"),
      "^src/(?!suspension/|geometry/|units/)",
      "suspension uses geometry and units",
    ),
    forbid(
      "gaps-looks-down",
      room("gaps"),
      "^src/(?!gaps/|geometry/|units/)",
      "gaps uses geometry and units",
    ),
    forbid(
      "studies-looks-down",
      room("studies"),
      "^src/(app|cli|serve|files)/",
      "studies knows no app, no command line, no files",
    ),
    forbid(
      "files-at-the-edge",
      room("files"),
      "^src/(app|cli|serve|studies|suspension|gaps)/",
      "files turns bytes into plain data",
    ),
    forbid(
      "cli-knows-no-app",
      room("(cli|serve)"),
      "^src/app/",
      "the command line runs without the workbench",
    ),
    forbid("app-knows-no-cli", room("app"), "^src/(cli|serve)/", "the workbench runs without Node"),
    forbid(
      "core-is-pure",
      "^src/(units|geometry|setup|suspension|gaps|studies)/",
      "node_modules/(react|react-dom|three|@react-three|zustand|zundo|idb-keyval|commander)(/|$)",
      "the numeric core imports neither React, three.js nor Node",
    ),
    {
      name: "core-knows-no-node",
      comment: "the numeric core runs the same in a browser, a worker and Node",
      severity: "error",
      from: { path: "^src/(units|geometry|setup|suspension|gaps|studies)/" },
      to: { dependencyTypes: ["core"] },
    },
    forbid(
      "library-stands-alone",
      room("library"),
      "^src/(app|cli|serve)/",
      "the library is the core and its files",
    ),
    forbid(
      "nobody-knows-the-library",
      "^src/(?!library/)",
      room("library"),
      "it is a face, not a room to pass through",
    ),
    forbid("cli-knows-no-serve", room("cli"), "^src/serve/", "an installed command line has no bundler"),
    forbid("serve-knows-no-cli", room("serve"), "^src/cli/", "serving needs no verbs"),
    forbid(
      "three-in-app-and-files",
      "^src/(cli|serve)/",
      "node_modules/(react|react-dom|@react-three|zustand)(/|$)",
      "no views below app",
    ),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { extensions: [".ts", ".tsx", ".js", ".json"] },
  },
};
