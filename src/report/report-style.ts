/** The report's look: paper first, one column, black on white; nothing depends on color or on a network. */
export const REPORT_STYLE = `
:root{color-scheme:light;--ink:#16191b;--quiet:#5a6268;--rule:#b9c1c6;--lane-ink:#16191b}
*{box-sizing:border-box}
html{font:10.5pt/1.42 "Source Sans 3","Noto Sans","DejaVu Sans","Segoe UI",Arial,sans-serif;color:var(--ink);background:#fff}
body{max-width:182mm;margin:0 auto;padding:8mm 0 20mm}
h1{font-size:22pt;line-height:1.12;margin:0 0 1mm}
h2{font-size:15pt;margin:11mm 0 3mm;padding-top:2mm;border-top:2.4pt solid var(--ink);break-after:avoid}
h3{font-size:11.5pt;margin:5mm 0 1.5mm;break-after:avoid}
p{margin:0 0 2mm}
.quiet{color:var(--quiet)}
.answer{font-size:14pt;line-height:1.3;margin:4mm 0 5mm;font-weight:600}
.trouble{border:1.4pt solid var(--ink);padding:2mm 3mm;margin:0 0 2mm}
.cautions{border:1.4pt solid var(--ink);padding:2.5mm 4mm 1mm;margin:4mm 0;break-inside:avoid}
.cautions h2{border:0;margin:0 0 1.5mm;padding:0;font-size:12pt}
.cautions{font-size:9.2pt;line-height:1.34}
.cautions ul,.remarks{margin:0;padding-left:5mm}
.cautions li{margin-bottom:.7mm}
.remarks li{margin-bottom:1.2mm}
.tally{display:flex;gap:0;margin:0 0 3mm;padding:0;list-style:none;border:1pt solid var(--ink)}
.tally li{flex:1;padding:1.5mm 2.5mm;border-left:1pt solid var(--ink)}
.tally li:first-child{border-left:0}
.tally b{display:block;font-size:17pt;line-height:1.1;font-variant-numeric:tabular-nums}
.tally .grave{background:var(--ink);color:#fff}
.unit{break-inside:avoid;border-left:3.2pt solid var(--ink);padding:0 0 1mm 4mm;margin:0 0 6mm}
.unit.mild{border-left-style:double;border-left-width:4pt}
.unit header{display:flex;align-items:baseline;gap:4mm;flex-wrap:wrap}
.unit h3{font-size:14pt;margin:0}
.place{color:var(--quiet);flex:1}
.tier{border:1pt solid var(--ink);padding:0 2mm;font-weight:600;font-size:9.5pt}
.tier.safety{background:var(--ink);color:#fff}
.finding{display:grid;grid-template-columns:9mm 1fr;column-gap:2mm;margin-top:2mm}
.rank{font-weight:700;font-size:12pt;text-align:right;font-variant-numeric:tabular-nums}
.finding p{margin:0 0 .8mm}
.finding .what{font-weight:700}
.finding .what span{font-weight:400;color:var(--quiet)}
.check b{font-weight:700}
.fire-lanes{margin-top:2mm;width:86%;height:auto;display:block}
.lane-key{margin:1mm 0 4mm;width:100%;height:auto;display:block}
table{border-collapse:collapse;width:100%;font-size:8.8pt;margin:0 0 3mm;font-variant-numeric:tabular-nums}
thead{display:table-header-group}
th{text-align:left;font-weight:700;vertical-align:bottom;border-bottom:1.2pt solid var(--ink);padding:.6mm 1.4mm}
td{padding:.6mm 1.4mm;border-bottom:.4pt solid var(--rule);vertical-align:top;overflow-wrap:break-word}
tr{break-inside:avoid}
th.n,td.n{text-align:right}
td.n,td.d{white-space:nowrap}
.raw{overflow-wrap:anywhere;font-family:"DejaVu Sans Mono",Consolas,monospace;font-size:7.6pt}
.cell{break-inside:avoid;margin:0 0 4mm}
.cell h3{margin:0 0 .6mm}
.cell u{text-decoration-thickness:.6pt;text-underline-offset:2pt}
a{color:inherit}
.working{margin:0 0 3mm;padding:0 0 2mm;border-bottom:.4pt solid var(--rule);font-size:8.6pt;line-height:1.36}
.working summary{font-size:10pt;cursor:pointer;break-after:avoid}
.working h4{margin:2mm 0 .6mm;font-size:9.2pt;break-after:avoid}
.working p{margin:0 0 1mm}
.working .in{color:var(--quiet)}
.steps{margin:0 0 1mm;padding-left:6mm}
.steps li{margin:0 0 .6mm;break-inside:avoid}
.put{color:var(--quiet)}
sub{font-size:.76em;line-height:0}
dl{display:grid;grid-template-columns:46mm 1fr;gap:1.2mm 3mm;margin:0;font-size:9pt}
dt{font-weight:700}dd{margin:0}
@page{margin:15mm 14mm 17mm;@bottom-right{content:counter(page) " / " counter(pages);font:8.5pt sans-serif;color:#5a6268}}
/* A printer that leaves fills out would leave white words on white paper; rules at the very edge would be cut. */
.tier.safety,.tally .grave,.fire-lanes,.lane-key{-webkit-print-color-adjust:exact;print-color-adjust:exact}
@media print{body{padding:0 .4mm;max-width:none}.working::details-content{content-visibility:visible;display:block;block-size:auto;opacity:1}.working summary{list-style:none}}
`;
