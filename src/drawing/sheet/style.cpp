// SPDX-License-Identifier: MIT
#include "parts.hpp"

namespace lodebook::drawing {

// Colours are those of the pictures. What was typed is in the face of a typewriter, what was made
// of it in that of the pictures. No `<` and no `&`, so that it is the same text in HTML and in XML.
const std::string_view sheet_style = R"css(
:root{
  --paper:#fffefa;--ink:#20242a;--soft:#5f656c;--rule:#d9d6cb;--warm:#a33b12;
  --tint:#f4f0e4;--marked:#ffe9a8;
  --prose:Charter,'Bitstream Charter',Cambria,Georgia,'DejaVu Serif',serif;
  --figures:'DejaVu Sans',Verdana,Arial,sans-serif;
  --typed:'DejaVu Sans Mono',Menlo,Consolas,monospace;
}
@media screen and (prefers-color-scheme:dark){
  :root{
    color-scheme:dark;
    --paper:#17191c;--ink:#e6e4dd;--soft:#a2a7ab;--rule:#3f474f;--warm:#f08a5d;
    --tint:#23272c;--marked:#57430c;
  }
}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;padding:1.5rem;max-width:64rem;background:var(--paper);color:var(--ink);
  font:1rem/1.45 var(--prose);overflow-wrap:anywhere}
h1,h2,h3,h4{line-height:1.2;font-weight:bold}
h1{font-size:1.9rem;margin:0 0 .8rem}
h2{font-size:1.3rem;margin:2.2rem 0 .7rem;padding-bottom:.25rem;border-bottom:3px double var(--ink)}
h3{font-size:1.15rem;margin:0 0 .3rem}
h4{font-size:.8rem;margin:.7rem 0 .2rem;color:var(--soft)}
p{margin:.4rem 0;max-width:44rem}
ul,ol{margin:.2rem 0;padding-left:1.4rem}
a{color:inherit;text-decoration:underline;text-decoration-color:var(--soft);
  text-decoration-thickness:1px;text-underline-offset:.2em}
a:hover{text-decoration-color:var(--warm);text-decoration-thickness:2px}
:focus-visible{outline:3px solid var(--warm);outline-offset:2px}
a,b,code,dd,i,mark,span,strong{unicode-bidi:isolate}
.alarm{color:var(--warm);border:2px solid;padding:.4rem .6rem}
.unseen{position:absolute;width:1px;height:1px;margin:-1px;overflow:hidden;clip-path:inset(50%)}

.facts{margin:0 0 .5rem;font-size:.85rem;line-height:1.4}
.facts div{display:grid;grid-template-columns:6.2rem minmax(0,1fr);gap:0 .6rem}
.facts dt{color:var(--soft)}
.facts dd{margin:0}
.station .facts{display:flex;flex-wrap:wrap;gap:0 1.2rem}
.station .facts div{display:block}
.station .facts dt,.station .facts dd{display:inline}
.station .facts dt::after{content:' '}

nav ul{list-style:none;padding:0;display:flex;flex-wrap:wrap;gap:.1rem 1rem;font-size:.9rem;
  margin-top:1rem}
nav small{color:var(--warm)}

code{display:block;font:.8rem/1.5 var(--typed);white-space:pre-wrap;margin:.1rem 0}
mark{background:none;color:inherit;border-bottom:3px solid var(--warm);font-weight:bold}
#first li{margin:.5rem 0}
.key{font-size:.85rem;color:var(--soft)}

.station{margin:1.4rem 0;padding-top:.7rem;border-top:1px solid var(--ink)}
.station:first-of-type{border-top:0;padding-top:0}
table{border-collapse:collapse;width:100%;table-layout:fixed;font:.78rem/1.4 var(--figures)}
caption{text-align:left;font:italic .85rem/1.4 var(--prose);color:var(--soft);padding:.2rem 0}
th,td{text-align:left;vertical-align:top;padding:.22rem .5rem .22rem 0;font-weight:normal}
thead th{color:var(--soft);border-bottom:1px solid var(--ink);vertical-align:bottom}
tbody tr{border-bottom:1px solid var(--rule)}
tr>:nth-child(1){width:5%}
tr>:nth-child(2){width:11.5%}
tr>:nth-child(3){width:22%}
tr>:nth-child(4){width:28%}
tr>:nth-child(5){width:6%}
tr>:nth-child(6){width:8%}
tbody th{color:var(--soft)}
tbody th,td:nth-child(n+4):nth-child(-n+6){font-variant-numeric:tabular-nums lining-nums}
td:nth-child(3) a,td:nth-child(3) span{font-family:var(--typed)}
td i{display:block;color:var(--soft);font-family:var(--prose)}
td span,td strong{display:block}
td:nth-child(4) b,td:nth-child(4) span{display:inline-block;margin-right:.5rem}
td:nth-child(4) span{color:var(--soft)}
td:nth-child(7) a,td:nth-child(7) span{display:block}
.ok td:nth-child(7) b{font-weight:normal;color:var(--soft)}
.suspect td:nth-child(7) b,.rejected td:nth-child(7) b{color:var(--warm)}
tr.suspect,tr.rejected{background:var(--tint)}
tr.marked{background:var(--marked)}

.checks,.faults{font-size:.85rem;line-height:1.4}
.checks{list-style:none;padding:0;display:flex;flex-wrap:wrap;gap:0 1.2rem}
.faults{list-style:none;padding:0}
.faults li{margin:.4rem 0;padding-left:.7rem;border-left:3px solid var(--rule)}
.faults .warning{border-left:3px dashed var(--warm)}
.faults .error{border-left:3px solid var(--warm)}
.faults p{margin:.1rem 0}
.faults .code{color:var(--soft);font:.75rem var(--typed)}
.faults .help{font-style:italic}
.faults :target,.faults li:target{background:var(--marked)}

figure{margin:0 0 1.5rem}
svg.drawn{display:block;max-width:100%;height:auto}
figcaption{display:none;font-size:.85rem}
@media screen{
  svg.drawn .marked .mark,svg.drawn .marked .symbol,svg.drawn .marked .solid,
  svg.drawn .marked .hollow,svg.drawn .marked .curve,svg.drawn .marked .ray,
  svg.drawn .marked .leg,svg.drawn .marked .raw,svg.drawn .marked .tick{stroke:var(--warm);stroke-width:1.2}
  svg.drawn .marked .mark{stroke-width:1.6;paint-order:stroke}
}
@media screen and (min-width:80rem){
  body{max-width:110rem}
  main{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,36rem);gap:0 2rem}
  #pictures{position:sticky;top:0;max-height:100vh;overflow-y:auto;align-self:start}
}
@media screen and (max-width:44rem){
  body{padding:.8rem}
  h1{font-size:1.5rem}
  .facts div{grid-template-columns:5.2rem minmax(0,1fr)}
  figcaption{display:block}
  table,tbody,caption{display:block}
  thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
  tbody tr{display:grid;grid-template-columns:repeat(4,minmax(0,1fr));gap:0 .6rem;padding:.4rem 0}
  tbody tr>:nth-child(n){width:auto}
  tbody th,td{padding:0}
  tbody th::before{content:'line '}
  tr>:nth-child(-n+4),td:nth-child(6){grid-column:span 2}
  td:nth-child(2){text-align:right}
  td:nth-child(6):not(:empty)::before{content:'added '}
  td:nth-child(7){text-align:right}
  td:nth-child(7):not(:has(b:only-child)){grid-column:1 / -1;text-align:left}
}
@page{margin:15mm 14mm 17mm}
@media print{
  :root{--marked:none;--tint:none;--rule:#bbb;--soft:#444;--warm:#000;--paper:#fff;--ink:#000}
  html{font-size:9.5pt}
  table,.checks,.faults{line-height:1.3}
  h4{margin:.4rem 0 .1rem}
  .station{margin:1rem 0;padding-top:.5rem}
  body{padding:0;max-width:none}
  nav{display:none}
  a{text-decoration:none}
  :focus-visible{outline:none}
  h1,h2,h3,h4,caption,thead{break-after:avoid}
  .station,tr,li,.facts{break-inside:avoid}
  p,li{orphans:3;widows:3}
  #pictures{break-before:page}
  #pictures h2{margin-top:0}
  figure{break-inside:avoid}
  svg.drawn{max-height:235mm;margin:0 auto}
  svg.drawn .paper{fill:none}
}
)css";

}  // namespace lodebook::drawing
