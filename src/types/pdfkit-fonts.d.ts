/** Metrics of the fonts that every PDF reader has; the types of the package leave them out. */
declare module 'pdfkit/standard-fonts/*' {
  const font: { readonly name: string };
  export default font;
}
