#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Pages as people type them, against what their writers meant.
  score.py TOOL [--strict|--heading] [-v] PAGE.txt...      the truth stands beside each page as PAGE.tsv
Runs `TOOL fair-copy PAGE` and reduces the copy; with --strict the page itself; with --heading the page, its heading and positions put into the language.
Each reading of a page falls into one class:
  read    a row says what the writer meant            offered  asked or refused, and the question, fix or help of its line gives what the writer meant
  poor    asked or refused without it                  silent   another value, no row, or free text: and nothing said on its line
Of those that the writer must be asked about (certain=no), `guess` is one taken without a word. Faults of fact: `caught` or `missed`.
Settings (date set declination rule order dial pace) and positions: right, asked or missing. Exit status 0; the last line holds the figures."""
import csv, json, os, re, subprocess, sys, tempfile
args = sys.argv[1:]; verbose = '-v' in args; heading = '--heading' in args; fair = not heading and '--strict' not in args
args = [a for a in args if a not in ('-v', '--heading', '--strict')]; tool, pages = args[0], args[1:]
KINDS = "bedding foliation cleavage schistosity joint fault shear vein dike dyke contact axial-plane lineation slickenline fold-axis intersection stretching flute current sight leg".split()

ALIAS = {"dyke": "dike"}
NOT_ABOUT_THE_READING = {"landmark-unknown", "station-unknown", "set-missing", "declination-missing", "declination-stale", "declination-sign", "notation-mixed", "reading-outside-station", "strike-uncertain", "trend-uncertain"}
def reduce(text):
    d = tempfile.mkdtemp(); p = os.path.join(d, "x.log"); open(p, "w").write(text)
    r = subprocess.run([tool, "reduce", "--format", "json", "--quiet", "--north", "magnetic", p], capture_output=True, text=True, timeout=120)
    global stations
    try: doc = json.loads(r.stdout)["logs"][0]
    except Exception: return [], []
    stations = doc["stations"]
    rows = [x for s in doc["stations"] for x in s["readings"]] + list(doc.get("readings", []))
    for x in rows: x["line"] = int(x["source"].split(":")[1])
    return rows, doc["diagnostics"]

def num(x): return None if x is None or x == '' else float(x)
def circ(a, b): return abs((a - b + 180) % 360 - 180)
def plane_pole_gap(a, b):
    return max(min(circ(a[0], b[0]), 360) if 0.5 < a[1] < 89.5 else min(circ(a[0], b[0]), circ(a[0] + 180, b[0])) if a[1] >= 89.5 else 0, abs(a[1] - b[1]))
def same(x, w, comment=""):
    if x["type"] != w["type"] or x["status"] == "rejected": return False
    for k in ("facing", "sense"):
        if (w.get(k) or None) != (x.get(k) or None) and not (k == "facing" and not w.get(k) and "young" in comment): return False
    k1, k2 = (ALIAS.get(str(r.get("kind")).lower(), str(r.get("kind")).lower()) for r in (x, w))
    if k1 != k2 and k1 in KINDS and k2 in KINDS: return False          # a kind of the page's own may have another name
    if w["type"] in ("sight", "leg") and w.get("target"):
        t1, t2 = (set(re.findall(r"[^\W_]+", str(r.get("target") or "").lower())) for r in (x, w))
        if not t1 or not (t1 <= t2 or t2 <= t1): return False
    if w["type"] == "leg" or (w.get("codes") and "back" in str(w.get("codes"))):
        u, v = (num(r.get("back_bearing")) for r in (x, w))
        u, v = (None if b is None else b - (num(r.get("correction")) or 0) for b, r in ((u, x), (v, w)))     # as read, like the fore bearing
        if (u is None) != (v is None) or (u is not None and circ(u, v) > .06): return False
    # doubt and roughness: marked in the one or the other way, or in neither
    marked = lambda r: "doubtful" in str(r.get("codes")) or bool(re.search(r"~|\babout\b|±", str(r.get("written"))))
    if w["type"] != "leg" and marked(x) != marked(w): return False
    if w["type"] == "plane":
        if num(x["dip"]) is None: return False
        a, b = num(x["as_read"]), num(w["as_read"])
        if b is None: return a is None and num(x["dip"]) == num(w["dip"])
        return a is not None and plane_pole_gap((a, num(x["dip"])), (b, num(w["dip"]))) < .06
    a, b = num(x["as_read"]), num(w["as_read"])
    unread = w["type"] == "line" and num(w.get("plunge")) == 0 and num(x.get("plunge")) in (None, 0)   # a direction whose plunge nobody read
    if (a is None) != (b is None) or (a is not None and min(circ(a, b), circ(a + 180, b) if unread and num(x.get("plunge")) is None else 360) > .06): return False
    for k in ("plunge", "distance_m", "vertical_angle"):
        u, v = num(x.get(k)), num(w.get(k))
        if k == "plunge" and unread: continue
        if w["type"] == "leg" and k == "distance_m" and v and u and abs(u - v) < .3: continue
        if (u is None) != (v is None) or (u is not None and abs(u - v) > .06): return False
    return True

def truth(path):
    out = []
    for r in csv.DictReader(open(path), delimiter="\t", quoting=csv.QUOTE_NONE):
        if not (r.get("line") or "").strip(): continue
        out.append((int(r["line"]), int(r["n"]), (r["canonical"] or "").strip(), (r["certain"] or "").strip(), r.get("comment") or ""))
    return out

def canonical_rows(rows):
    """what the tool itself makes of each canonical statement"""
    text, at, declared = [], {}, set()
    def put(s, key=None):
        text.append(s)
        if key is not None: at[len(text)] = key
    for l, n, c, ok, com in rows:
        w = c.split()[0] if c else ''
        if n == 0 and w in ("rule", "order", "dial", "pace", "kind", "short", "accuracy"): put(c); declared.add(c.split()[1] if w in ("kind",) and len(c.split()) > 1 else w)
    for l, n, c, ok, com in rows:
        for m in re.findall(r"kind ([A-Za-z][\w-]*) (plane|line)", com):
            if m[0] not in declared and m[0] not in KINDS: put(f"kind {m[0]} {m[1]}"); declared.add(m[0])
        w = c.split()[0].lower() if c else ''
        if n >= 1 and w and w not in KINDS and w not in declared and not any(t.startswith("short " + w + " ") for t in text):
            put(f"kind {w} {'line' if re.search(r'axis|line|groove|crest|stria|trough|clast|wall|rod|mineral|L[0-9]', w, re.I) else 'plane'}"); declared.add(w)
    put("station P")
    for i, (l, n, c, ok, com) in enumerate(rows):
        if n >= 1 and c: put(c, i)
    got, diags = reduce("\n".join(text) + "\n"); want = {}
    for x in got:
        if x["line"] in at: want.setdefault(at[x["line"]], x)
    return want

TOK = re.compile(r"[NSEW]\d+(?:\.\d+)?[EW]|\d+(?:\.\d+)?|[A-Za-z][\w-]+")
def leads(help_text, canonical, line_text):
    """the help holds the words and figures of the canonical statement (all but the kind may stand in the typed line already)"""
    h = set(t.upper().lstrip('0') or '0' for t in TOK.findall(help_text)); c = [t.upper().lstrip('0') or '0' for t in TOK.findall(canonical)]
    new = [t for t in c if t not in set(u.upper().lstrip('0') or '0' for u in TOK.findall(line_text))]
    return bool(h) and all(t in h for t in new) and any(t in h for t in c)

SETTINGS = ("date", "set", "declination", "rule", "order", "dial", "pace"); stations = []
total, settings = {}, {}
for page in pages:
    rows = truth(page[:-4] + ".tsv"); lines = open(page).read().split("\n"); want = canonical_rows(rows)
    text, back = [], {}
    if heading:
        fixed = {}; 
        for l, n, c, ok, com in rows:
            if n == 0 and c: fixed.setdefault(l, []).append((c, com))
        seen = 0
        for i, s in enumerate(lines, 1):
            reading_too = any(l == i and n >= 1 for l, n, *_ in rows)
            for c, com in fixed.get(i, []):
                if c.startswith("at "): seen += 1; m = re.search(r"station\s+(?:Sta\.|St\.|Stn|Loc|Pt\.|Stop|#)?\s*([\w.-]+)", com); text.append(f"station {m.group(1) if m else 'X%d' % seen} {c}")
                else: text.append(c)
                back[len(text)] = i
            if i not in fixed or reading_too: text.append(s); back[len(text)] = i
    elif fair:
        r = subprocess.run([tool, "fair-copy", page], capture_output=True, text=True, timeout=120); at = 0
        if r.returncode not in (0, 1): print(os.path.basename(page), "no fair copy: status", r.returncode, (r.stderr.strip().split("\n") or [""])[-1][:100])
        for s in r.stdout.split("\n"):
            m = re.match(r"\s*# page (\d+): ", s)
            if m: at = int(m.group(1))
            else:
                k = next((k for k in range(at + 1, len(lines) + 1) if s.strip() and lines[k - 1].strip() == s.strip()), None)
                if k is not None: at = k
            text.append(s); back[len(text)] = at
    else: text = lines; back = {i: i for i in range(1, len(lines) + 1)}
    got, diags = reduce("\n".join(text) + "\n")
    byline, said = {}, {}
    for x in got: byline.setdefault(back.get(x["line"]), []).append(x)
    for d in diags: said.setdefault(back.get(d["line"]), []).append(d)
    tally = {}; used = set(); asks = {}
    for i, t in enumerate(text, 1):
        if t.strip().lower().startswith("ask "): asks.setdefault(back.get(i), []).append(t.strip())
    page_asks = any(re.match(r"ask (order|rule|kind|short|dial)\b", t, re.I) for ts in asks.values() for t in ts)
    norm = lambda t: " ".join(re.split(r"\s[;#]", t)[0].lower().split())
    taken = {norm(t) for t in text if t.strip() and not t.strip().lower().startswith(("ask ", "#"))}
    placed = [s["position"] for s in stations if s.get("position")]
    for l, n, c, ok, com in rows:
        w = c.split()[0].lower() if c else ''
        if n != 0 or ok == "fault" or w not in SETTINGS + ("at",): continue
        if w == "at":
            reduce("station P " + c + "\n"); q = next((s["position"] for s in stations if s.get("position")), None)
            hit = q and any(abs(a["latitude"] - q["latitude"]) < 2e-4 and abs(a["longitude"] - q["longitude"]) < 3e-4 for a in placed)
        else: hit = norm(c) in taken
        asked = any(a.lower().startswith("ask " + w) for t in asks.values() for a in t)
        cls = "right" if hit else "asked" if asked else "missing"; settings[cls] = settings.get(cls, 0) + 1
        if verbose and cls == "missing": print(f"  {os.path.basename(page)}:{l} setting missing: {lines[l-1].strip()!r} meant {c!r}")
    for i, (l, n, c, ok, com) in enumerate(rows):
        if n < 1: continue
        ds = [d for d in said.get(l, []) if d["severity"] in ("error", "warning") and d["code"] not in NOT_ABOUT_THE_READING]
        waits = page_asks and any(x["status"] == "rejected" for x in byline.get(l, []))       # for the answer to a question about the page
        if ok == "fault": cls = "caught" if ds or any(d["severity"] == "note" and d["code"] not in NOT_ABOUT_THE_READING for d in said.get(l, [])) else "missed"
        elif i not in want or want[i]["status"] == "rejected": cls = "untestable"
        else:
            hit = next((k for k, x in enumerate(byline.get(l, [])) if (l, k) not in used and same(x, want[i], com)), None)
            if hit is not None: used.add((l, hit))
            helps = " ".join(asks.get(l, [])) + " " + " ".join((d.get("help") or "") + " " + " ".join(str(f.get("text", f)) for f in d.get("fixes") or []) for d in said.get(l, []))
            if hit is not None and ok == "yes": cls = "read"
            elif hit is not None: cls = "guess" if not said.get(l) else "asked"
            elif ds or waits: cls = "offered" if waits or leads(helps, c, lines[l - 1]) else "poor"
            else: cls = "silent"
        tally[(ok, cls)] = tally.get((ok, cls), 0) + 1
        if verbose and cls in ("poor", "silent", "missed", "guess", "untestable"):
            print(f"  {os.path.basename(page)}:{l}.{n} {cls}: {lines[l-1].strip()!r} meant {c!r}" + (f" help {' | '.join((d.get('help') or '') for d in said.get(l, []))[:150]!r}" if said.get(l) else ""))
    print(os.path.basename(page), " ".join(f"{k[0]}/{k[1]} {v}" for k, v in sorted(tally.items())))
    for k, v in tally.items(): total[k] = total.get(k, 0) + v
y = {c: total.get(("yes", c), 0) for c in ("read", "offered", "poor", "silent")}; s = sum(y.values()) or 1
nn = {c: total.get(("no", c), 0) for c in ("offered", "asked", "poor", "guess", "silent")}
f = {c: total.get(("fault", c), 0) for c in ("caught", "missed")}
print(f"certain {s}: read {100*y['read']/s:.0f} %, offered {100*y['offered']/s:.0f} %, poor {100*y['poor']/s:.0f} %, silent {100*y['silent']/s:.1f} % | must ask {nn} | faults {f} | settings and positions {settings}")
