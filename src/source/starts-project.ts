/** Telling a project file from any other YAML by how it begins. */

/** Comments, directives, marks of a document, and nothing. */
const before = /^(?:#.*|%.*|---(?:\s+#.*)?)?$/;
const begins = /^\{?\s*(["']?)ampledger\1\s*:/;

/** Whether the first line that says something begins with `ampledger:`. @param head of a file, as text */
export function startsProject(head: string): boolean {
  // A byte order mark, also one that was read byte by byte.
  const text = head.replace(/^(?:\ufeff|\u00ef\u00bb\u00bf)/, '');
  for (let from = 0; from <= text.length;) {
    const end = text.indexOf('\n', from);
    const line = text.slice(from, end < 0 ? text.length : end).trim();
    if (!before.test(line)) return begins.test(line);
    if (end < 0) return false;
    from = end + 1;
  }
  return false;
}
