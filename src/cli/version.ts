/** Kept equal to package.json by a test: reading that file at every start would cost more than the answer. */
export const version = '0.1.0';
