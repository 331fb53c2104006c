/** A JSON Schema as plain data. */
export type JsonSchema = { readonly [keyword: string]: unknown };
export declare function assembled(): Readonly<Record<string, JsonSchema>>;
export declare function isUpToDate(path: string, schema: JsonSchema): boolean;
export declare function assembleSchemas(): Promise<string>;
