/** Where the figures of a profile come from, counted. */
import { isFields, isFigure } from './profile.js';

export interface SourceCounts {
  readonly document: number;
  readonly practice: number;
  readonly memory: number;
}

/** How many figures and rows of a profile each kind of source has. */
export function sourceCounts(profile: unknown): SourceCounts {
  const counts = { document: 0, practice: 0, memory: 0 };
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(visit);
    if (!isFields(node)) return;
    const cite = node['cite'];
    // A block's own source stands for what it says in words; it is no figure unless it states one.
    if (Array.isArray(cite) && (isFigure(node) || !Object.values(node).some(isBlock))) {
      const [key] = cite as readonly unknown[];
      counts[key === 'practice' || key === 'memory' ? key : 'document'] += 1;
    }
    for (const [key, each] of Object.entries(node)) if (key !== 'documents' && key !== 'cite') visit(each);
  };
  visit(profile);
  return counts;
}

/** Something inside that has a source of its own. */
const isBlock = (node: unknown): boolean =>
  Array.isArray(node) ? node.some(isBlock) : isFields(node) && ('cite' in node || Object.values(node).some(isBlock));

/** The counts as words: '12 figures: 9 from documents, 2 common practice, 1 from memory'. */
export function countWords({ document, practice, memory }: SourceCounts): string {
  const all = document + practice + memory;
  const parts = [
    ...(document > 0 ? [`${document} from documents`] : []),
    ...(practice > 0 ? [`${practice} common practice`] : []),
    ...(memory > 0 ? [`${memory} from memory`] : []),
  ];
  return `${all} ${all === 1 ? 'figure' : 'figures'}: ${parts.join(', ')}`;
}
