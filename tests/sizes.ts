/** How much is tried: a share of it at every run of the tests, all of it by `npm run test:long`. */
export const sized = (everyday: number, long: number): number => (process.env['LONG'] === 'yes' ? long : everyday);
