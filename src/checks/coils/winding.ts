/** What the winding of an inductive load is called, by the load's type. */
const WINDINGS: Readonly<Record<string, string>> = { 'dc-motor': 'motor', stepper: 'winding' };

export const windingOf = (type: string): string => WINDINGS[type] ?? 'coil';
