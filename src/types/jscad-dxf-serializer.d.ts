/** The part of the serializer that is used here: the package brings no types. */
declare module '@jscad/dxf-serializer' {
  /** An open or closed run of points, as the serializer expects a path. */
  interface SerializablePath {
    readonly points: readonly (readonly [number, number])[];
    readonly isClosed: boolean;
    /** Column-major 4 x 4 matrix. */
    readonly transforms: readonly number[];
  }
  export function serialize(options: { readonly pathTo?: 'lwpolyline' }, ...paths: SerializablePath[]): [string];
}
