/** Why a file cannot be opened, by the system's own code. */
const OPEN_MENDS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file; check the name and the folder",
  ENOTDIR: "there is no such file; check the name and the folder",
  EISDIR: "is a folder; name the setup file inside it",
  EACCES: "may not be read; ask for permission to read it",
  EPERM: "may not be read; ask for permission to read it",
  ENAMETOOLONG: "the name is too long for a file; check it",
  ELOOP: "is a link that leads to itself; name the file it should lead to",
};

/** What to say of an error from opening a file, without a full stop. */
export function openMend(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return (code && OPEN_MENDS[code]) || `cannot be read${code ? ` (${code})` : ""}; check the name`;
}
