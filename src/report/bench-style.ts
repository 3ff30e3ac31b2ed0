/** Look of the bench sheet: small but legible, everything on one sheet of A4, boxes to write in. */
export const benchStyle = `
:root{--ink:#15181c;--soft:#4b545d;--line:#c3c9cf;--fail:#9c1420;--caution:#8a5a00;--open:#45525e;--pass:#17633a}
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0 auto;max-width:194mm;padding:4mm;background:#fff;color:var(--ink);--scale:1;font:calc(7.5pt*var(--scale))/1.2 Arial,"Liberation Sans","DejaVu Sans",sans-serif}
header{display:flex;gap:4mm;align-items:baseline;justify-content:space-between;border-bottom:.5mm solid var(--ink)}
h1{margin:0;font-size:1.7em;line-height:1.15;overflow-wrap:anywhere}
.mark-of{margin:0;white-space:nowrap;color:var(--soft)}.mark-of strong{color:var(--ink);font-size:1.6em;margin-right:1mm}
h2{margin:calc(2mm*var(--scale)) 0 .6mm;font-size:1.14em;line-height:1.15}
p{margin:0 0 .8mm}
.fail{--tone:var(--fail)}.caution{--tone:var(--caution)}.not-assessed{--tone:var(--open)}.pass{--tone:var(--pass)}
.mark{width:3mm;height:3mm;vertical-align:-.5mm;fill:none;stroke:var(--tone);stroke-width:2.4;stroke-linejoin:round;stroke-linecap:round}
.mark .solid{fill:var(--tone)}.mark .cutout{stroke:#fff}
.verdict{display:grid;grid-template-columns:auto 1fr;gap:2.5mm;align-items:center;margin:1.6mm 0;padding:1.2mm 2mm;border:.3mm solid var(--ink);border-left:3mm solid var(--tone);font-size:1.14em}
.verdict .mark{width:7mm;height:7mm}.verdict p{margin:0;overflow-wrap:anywhere}.verdict .word{color:var(--tone)}
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 4mm;align-items:start}
.top{grid-template-columns:104mm 1fr}
figure{margin:0}
figure svg{display:block;width:100%;height:auto;max-height:calc(46mm*var(--scale)*var(--scale))}
table{width:calc(100% - .4mm);border-collapse:separate;border-spacing:0;table-layout:fixed;font-variant-numeric:tabular-nums}
td.tool,th.tool{padding-left:1.6mm}
th,td{padding:calc(.45mm*var(--scale)) 1mm calc(.45mm*var(--scale)) 0;border-bottom:.2mm solid var(--line);text-align:left;vertical-align:middle;overflow-wrap:anywhere}
thead th{border-bottom:.3mm solid var(--ink);font-size:.93em;color:var(--soft)}
tbody th{font-weight:400}
.number{text-align:right}
td.number:first-child{text-align:left;color:var(--soft)}
.soft{color:var(--soft)}
td.box{height:calc(5mm*var(--scale));padding:0 1mm;border:.3mm solid var(--ink);border-bottom:0}
tr:last-child td.box,.sensor td.box{border-bottom:.3mm solid var(--ink)}
.mind ul{margin:0 0 .8mm;padding:0;list-style:none}.mind li{margin:0 0 .5mm}
.sign{display:flex;gap:5mm;margin:calc(5.5mm*var(--scale)) 0 0}.sign span{flex:1;border-top:.25mm solid var(--ink);padding-top:.6mm;color:var(--soft)}
@media (max-width:640px){.two,.top{grid-template-columns:1fr}}
@page{size:A4 portrait;margin:9mm 9mm 8mm}
@media print{body{max-width:none;padding:0}.two{grid-template-columns:1fr 1fr}.top{grid-template-columns:104mm 1fr}}
`.trim();
