/** Look of the report page: a shop sheet in dark ink on white. Colour only repeats what word and shape already say. */
export const reportStyle = `
:root{--ink:#15181c;--soft:#4b545d;--line:#c3c9cf;--fail:#9c1420;--caution:#8a5a00;--open:#45525e;--pass:#17633a}
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;background:#fff;color:var(--ink);font:10.5pt/1.42 Arial,"Liberation Sans","DejaVu Sans",sans-serif}
main,header{max-width:186mm;margin:0 auto;padding:0 4mm}
header{padding-top:8mm}
main{padding-bottom:8mm}
.kind{margin:0;color:var(--soft);font-size:8.5pt}
h1{margin:.5mm 0 4mm;font-size:19pt;line-height:1.2;overflow-wrap:anywhere}
h2{margin:7mm 0 2mm;padding-bottom:1mm;border-bottom:.5mm solid var(--ink);font-size:13pt;break-after:avoid}
p{margin:0 0 2mm}
h2 + *{break-before:avoid}
.banner{display:grid;grid-template-columns:auto 1fr;gap:1mm 5mm;align-items:center;padding:4mm 5mm;border:.35mm solid var(--ink);border-left:4mm solid var(--tone);break-inside:avoid}
.banner .mark{width:15mm;height:15mm;grid-row:span 2}
.banner .word{margin:0;font-size:22pt;font-weight:700;line-height:1.1;color:var(--tone)}
.banner .headline{margin:0;font-size:12.5pt;font-weight:600;overflow-wrap:anywhere}
.banner .counts{grid-column:2;margin:1mm 0 0;color:var(--soft);font-size:9.5pt}
.fail{--tone:var(--fail)}.caution{--tone:var(--caution)}.not-assessed{--tone:var(--open)}.pass{--tone:var(--pass)}
.mark{width:4.2mm;height:4.2mm;vertical-align:-.8mm;fill:none;stroke:var(--tone);stroke-width:2.4;stroke-linejoin:round;stroke-linecap:round}
.mark .solid{fill:var(--tone)}.mark .cutout{stroke:#fff}
ol.next{margin:0;padding-left:7mm}
ol.next li{margin-bottom:1.5mm;break-inside:avoid}
ol.next .about{color:var(--soft);font-size:9pt}
ol.next .tried{font-size:9pt}
a{color:inherit}
.warning{margin-top:4mm;padding:2.5mm 4mm;border:.35mm solid var(--ink);outline:.35mm solid var(--ink);outline-offset:.6mm;break-inside:avoid;font-size:9.5pt}
.warning h2{margin:0 0 1mm;padding:0;border:0;font-size:11pt}
.warning ul{margin:0;padding-left:5mm}
table{width:100%;border-collapse:collapse;font-size:9pt;font-variant-numeric:tabular-nums}
thead{display:table-header-group}
th,td{padding:1.1mm 2.5mm 1.1mm 0;border-bottom:.2mm solid var(--line);text-align:left;vertical-align:top;overflow-wrap:anywhere}
thead th{border-bottom:.35mm solid var(--ink);font-size:8.5pt;color:var(--soft)}
tbody th{font-weight:600}
tr{break-inside:avoid}
.short{break-after:avoid}
.short>th,.short>td{border-bottom:0;padding-bottom:0}
.number{text-align:right;white-space:nowrap}
.findings .number{padding-right:3.5mm}
.inches .number{white-space:normal}
.together{break-inside:avoid}
.answers td.word{white-space:nowrap;font-weight:700;color:var(--tone)}
.findings td.verdict{white-space:nowrap;font-weight:700;color:var(--tone);font-size:8.5pt}
.findings .code{margin-left:1.5mm;color:var(--soft);font-weight:400;font-size:7.5pt}
.findings .do{margin:1mm 0 0;font-weight:600}
.source{margin:.8mm 0 0;color:var(--soft);font-size:7.5pt}
.findings td p{margin:0}.findings td p.do{margin-top:.8mm}
.passes table{font-size:8pt;line-height:1.3}
.passes th,.passes td{padding-top:.7mm;padding-bottom:.7mm}
.passes .mark{width:3.4mm;height:3.4mm;vertical-align:-.6mm}
.passes .code{font-size:7pt}
.passes td.told{padding-left:4.6mm}
.passes .source{margin:0;font-size:7pt}
.memory{font-weight:700}
figure{margin:3mm 0 5mm;break-inside:avoid}
figure svg{display:block;margin:0 auto;max-width:100%;max-height:100mm;width:100%;height:auto}
.columns{display:grid;grid-template-columns:1fr 1fr;gap:0 7mm;align-items:start}
.columns figure{margin-top:1mm}
.columns figure svg{max-height:none}
figcaption{margin-top:1.5mm;color:var(--soft);font-size:9pt;text-align:center}
.held{font-weight:700}
ul.limits{margin:0;padding-left:5mm}
@media (max-width:640px){.columns{grid-template-columns:1fr}.findings table,.findings thead,.findings tbody,.findings tr,.findings td,.findings th{font-size:8.5pt}.wide{overflow-x:auto}}
@page{margin:13mm 12mm 15mm}
@page{@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt Arial,"Liberation Sans",sans-serif;color:#4b545d}}
@media print{header{padding-top:0}main,header{max-width:none;padding-left:0;padding-right:0}a{text-decoration:none}.wide{overflow:visible}}
`.trim();
