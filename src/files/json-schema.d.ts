/** JSON Schema, as plain JSON. */
export type JsonSchema = {
    readonly [name: string]: unknown;
};
/** The JSON Schema (2020-12) of the walk file, made from the schemas that read it. */
export declare function jsonSchema(): JsonSchema;
