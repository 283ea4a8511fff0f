/** What is said of a file that cannot be read or written: what is wrong and what would be right, without a full stop. */

/** By the system's own code. */
const OPEN_MENDS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file; check the name and the folder",
  ENOTDIR: "there is no such file; check the name and the folder",
  EISDIR: "is a folder; name the setup file inside it",
  EACCES: "may not be read; ask for permission to read it",
  EPERM: "may not be read; ask for permission to read it",
  ENAMETOOLONG: "the name is too long for a file; check it",
  ELOOP: "is a link that leads to itself; name the file it should lead to",
};

const MIB = 1024 * 1024;

/** A file that cannot be opened or read. @param code the system's */
export function openMend(code: string): string {
  return OPEN_MENDS[code] ?? `cannot be read (${code}); check the name`;
}

/** A setup that is a pipe or a device: it might never end. */
export const NO_SETUP_FILE =
  "is a pipe or a device, not a file; name a file, or hand the setup over on standard input with - as its name";

/** A mesh that is a folder, a pipe or a device. */
export const NO_MESH_FILE = "is no file; name the mesh file itself";

/** A setup of more bytes than are read. */
export function setupTooLargeMend(mostBytes: number): string {
  return `has more than ${Math.floor(mostBytes / MIB)} MB, the most a setup may have; name a setup file`;
}

/** A mesh file whose path does not stay in the setup's folder. */
export const MESH_OUTSIDE =
  "must lie in the setup's folder, its path written from there with / between folders; copy it there, or allow it with --allow-outside";

/** A mesh file that stands in the setup's folder, but is a link out of it. @param file where it leads */
export function meshLinkMend(file: string): string {
  return `is a link to ${JSON.stringify(file)}, which is outside the setup's folder; copy the mesh there, or allow it with --allow-outside`;
}

/** By the system's own code; what is not here is told by that code. */
const WRITE_MENDS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder; make it first",
  ENOTDIR: "there is no such folder; make it first",
  EISDIR: "is a folder; name a file inside it",
  EACCES: "may not be written; choose another folder",
  EPERM: "may not be written; choose another folder",
  EROFS: "may not be written; choose another folder",
  ENOSPC: "the disk is full; make room",
  EDQUOT: "your share of the disk is full; make room",
  EFBIG: "is larger than a file may be here; raise that limit (ulimit -f) or write elsewhere",
  ENAMETOOLONG: "the name is too long for a file; shorten it",
  ELOOP: "is a link that leads to itself; name the file it should lead to",
};

/** A file or stream that cannot be written. @param code the system's */
export function writeMend(code: string): string {
  return WRITE_MENDS[code] ?? `cannot be written (${code}); write elsewhere`;
}

/** A name to write to that is a pipe or a device. */
export const NO_OUT_FILE = "is a pipe or a device, not a file; choose another name";

/** A folder to write into that is a file. */
export const NO_OUT_FOLDER = "is a file, not a folder; name a folder for the drawings";

/** A name to write to that is a link to nothing. */
export const DANGLING_LINK = "is a link to a file that is not there; name that file itself";

/** A file to be written that the run itself reads. @param name what it was read as */
export function isInputMend(name: string): string {
  return `is the same file as ${JSON.stringify(name)}, which is read here; choose another name`;
}

/** Two names for one file to be written. */
export const NAMED_TWICE = "is named twice; name each file once";

/** A file that is there and does not carry our mark. */
export const NOT_OURS =
  "is there already and was not written by this program; choose another name, move it away, or replace it with --force";

/** That of all the files asked for none was written. */
export const NONE_WRITTEN = "nothing was written, and what was there stays as it was";

/** That of several files some were written. */
export function someWrittenMend(written: readonly string[], missing: readonly string[]): string {
  const list = (files: readonly string[]) => files.map((file) => JSON.stringify(file)).join(", ");
  return `written: ${list(written)}; not written: ${list(missing)}`;
}

/** A catalog that is a folder, a pipe or a device. */
export const NO_CATALOG_FILE = "is no file; name the catalog file itself";

/** A catalog of more bytes than are read. */
export const CATALOG_TOO_LARGE = "is larger than any catalog; name a catalog file";

/** A catalog of a kind that what was asked for does not go by. @param kinds those it goes by */
export function otherCatalogMend(kinds: readonly string[]): string {
  const named = kinds.map((kind) => JSON.stringify(kind)).join(", ");
  return `no catalog of this kind is used here; give one of kind ${named}`;
}

/** A setup to be written to another folder than the mesh files it names. */
export function meshesStayMend(files: readonly string[]): string {
  const named = files.map((file) => JSON.stringify(file)).join(", ");
  return `the setup names mesh files from its own folder (${named}); write it into that folder`;
}

/** A list for a chart that is a folder, a pipe or a device. */
export const NO_LIST_FILE = "is no file; name the list itself";

/** A list of more bytes than are read. */
export const LIST_TOO_LARGE = "is larger than any list of tires or wheels; name a list";

/** A file that no shard of a chart is. */
export const NO_SHARD = "is no piece of a chart; name the files that chart --shard wrote";

/** Shards of unlike charts. @param other the one before */
export function unlikeShardMend(other: string): string {
  return `is a piece of another chart than ${JSON.stringify(other)}; merge only what one setup, one pair of lists and one number of runs made`;
}

/** @param missing numbers of the runs, counted from 1 */
export function missingShardsMend(missing: readonly number[], of: number): string {
  const named = missing.slice(0, 12).map((at) => `${at}/${of}`);
  return `pieces are missing: ${named.join(", ")}${missing.length > 12 ? ", …" : ""}; run them and merge again`;
}

/** A piece that was cut off while it was written, or changed. */
export const BROKEN_SHARD = "does not hold every cell of its piece once; run that piece again";

/** Threads that share a job and cannot start. @param why as the system says it */
export function noThreadsMend(why: string): string {
  return `the threads that share this job could not be started (${why}); end other programs, or allow more memory and processes (ulimit -v, ulimit -u), and run it again`;
}
