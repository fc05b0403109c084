// SPDX-License-Identifier: MIT
// The tables behind the parser and every help text.
#include <lodebook/cli/option_table.hpp>

#include <algorithm>

namespace lodebook::cli {
namespace {

constexpr std::array<std::string_view, 4> formats = {"csv", "json", "geojson", "log"};
constexpr std::array<std::string_view, 3> register_formats = {"csv", "json", "geojson"};
constexpr std::array<std::string_view, 2> report_files = {"txt", "json"};
constexpr std::array<std::string_view, 2> reading_files = {"txt", "csv"};
constexpr std::array<std::string_view, 4> fix_files = {"txt", "json", "csv", "geojson"};
constexpr std::array<std::string_view, 3> summary_files = {"txt", "json", "csv"};
constexpr std::array<std::string_view, 2> log_files = {"txt", "log"};
constexpr std::array<std::string_view, 1> picture_files = {"svg"};
constexpr std::array<std::string_view, 2> page_files = {"html", "htm"};

constexpr std::array<CommandSpec, command_count> command_table = {{
    {Command::reduce, "reduce", "LOG...", "Clean, correct and check station logs.",
     "The table goes to standard output or to --output, the station report to standard\n"
     "error or to --report. LOG may be - for standard input; several logs make one\n"
     "table.\n"
     "\n"
     "  lodebook reduce day3.txt -o day3.csv\n"
     "  lodebook reduce day1.txt day2.txt -o season.geojson\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     formats, "lodebook"},
    {Command::check, "check", "LOG...", "Report what is wrong or odd in station logs.",
     "The report alone, to standard output or to --output. With --quiet there is only\n"
     "the exit status. With --watch it reads again whenever a log, or a heading of it,\n"
     "is saved, until Ctrl-C ends it (130, as a shell calls that status).\n"
     "\n"
     "  lodebook check day3.txt\n"
     "  lodebook check --watch day3.txt\n"
     "  lodebook check --strict *.txt\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     report_files},
    {Command::convert, "convert", "[READING...]", "Write readings in another notation.",
     "Each READING is one argument, in quotes if it has a space or a > in it; without\n"
     "arguments, readings come from standard input, one a line. With --column a CSV\n"
     "file is written again with that column converted and every other byte unchanged.\n"
     "Nothing is corrected unless --declination, --set or --north asks for it.\n"
     "\n"
     "  lodebook convert N50W 'N62E 37NW'\n"
     "  lodebook convert --as plane --to quadrant '37 > 332'\n"
     "  lodebook convert --column strike planes.csv -o planes-azimuth.csv\n"
     "\n"
     "Exit status: 0 no error, 1 a reading with an error, 2 a wrong command line, 3 a\n"
     "file that cannot be read or written.",
     reading_files},
    {Command::declination, "declination", "POSITION [DATE]",
     "Print the declination of a place and date.",
     "POSITION is written as in a log, with or without quotes. DATE is a day such as\n"
     "1978-07-19, or a decimal year (1978 is its first day); without it, today. The\n"
     "built-in geomagnetic models cover 1900-01-01 to 2030-01-01. The line that begins\n"
     "with `declination` can be pasted into the heading of a log.\n"
     "\n"
     "  lodebook declination 44.6891S 169.0144E --elevation 812\n"
     "  lodebook declination '59G 345210 5052310' 1978-07-19\n"
     "  lodebook declination -44.6891, 169.0144 1978.5 --format json\n"
     "\n"
     "Exit status: 0 no error, 1 a position or date with an error, 2 a wrong command\n"
     "line, 3 an output that cannot be written."},
    {Command::fix, "fix", "LOG...", "Find positions from the sights and legs of logs.",
     "Stations without a position get one from sights on landmarks, or from legs;\n"
     "sights from several stations place a landmark. Each position has its error\n"
     "ellipse and what is odd in its sights, each loop of legs its misclosure.\n"
     "\n"
     "  lodebook fix day3.txt\n"
     "  lodebook fix day3.txt -o day3.geojson --rays rays.geojson\n"
     "\n"
     "A fix is as good as its sights, and no substitute for local knowledge and\n"
     "proper instruments.\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     fix_files, "lodebook-fix"},
    {Command::fair_copy, "fair-copy", "PAGE", "Turn a page as you typed it into a log.",
     "What the page says beyond doubt is written as statements, what it does not say\n"
     "is asked (`ask ...`: answer by deleting that word, or the line), and what is no\n"
     "reading is kept as a note. Each line that changes stands as a comment above what\n"
     "was made of it. Read the copy through beside the page.\n"
     "\n"
     "  lodebook fair-copy page.txt -o day3.txt\n"
     "\n"
     "Exit status: 0 nothing is asked, 1 something is, 2 a wrong command line, 3 a\n"
     "file that cannot be read or written.",
     log_files},
    {Command::summary, "summary", "LOG...", "Sum up the planes and lines of logs.",
     "For each kind the mean, precision, fabric, fold axis and outliers. Planes are\n"
     "averaged by their poles, as axes. Rejected readings never count; suspect ones\n"
     "do, unless --without-suspect leaves them out.\n"
     "\n"
     "  lodebook summary day1.txt day2.txt\n"
     "  lodebook summary *.txt --by unit,station -o season.csv\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     summary_files},
    {Command::net, "net", "LOG...", "Draw planes and lines on an equal-area net (SVG).",
     "The lower hemisphere, with means, girdles and their cones of 95 % confidence.\n"
     "Planes are drawn as poles, or with --circles as great circles. --contours draws\n"
     "a net for each kind, with Kamb's density in multiples of sigma.\n"
     "\n"
     "  lodebook net day1.txt day2.txt -o net.svg\n"
     "  lodebook net *.txt --kind bedding --by unit --contours -o net.svg\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     picture_files},
    {Command::rose, "rose", "LOG...", "Draw roses of strikes and trends (SVG).",
     "A rose for each kind: strikes as axes in both halves, trends as arrows. The area\n"
     "of a petal shows its count. A mean is drawn only where it is meaningful.\n"
     "\n"
     "  lodebook rose day1.txt day2.txt -o rose.svg\n"
     "  lodebook rose *.txt --kind joint,vein --bin 15 -o joints.svg\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     picture_files},
    {Command::map, "map", "LOG...", "Draw stations, attitudes and sights on a map (SVG).",
     "On the UTM grid of the first station, with a symbol for each surface (the mean\n"
     "of its repeats), sights, error ellipses and traverses. Crowded symbols are moved\n"
     "aside; none is left out.\n"
     "\n"
     "  lodebook map day1.txt day2.txt -o map.svg\n"
     "\n"
     "A map is as good as its positions, and no substitute for local knowledge and a\n"
     "proper map.\n"
     "\n"
     "Exit status: 0 no error, 1 errors in a log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     picture_files},
    {Command::sheet, "sheet", "LOG", "Write a day's log as one page to print (HTML).",
     "The heading, what is worth a second look, every reading as typed and as\n"
     "corrected, net, rose and map, and the report. One file, which needs no network.\n"
     "\n"
     "  lodebook sheet day3.txt -o day3.html\n"
     "\n"
     "Exit status: 0 no error, 1 errors in the log, 2 a wrong command line, 3 a file\n"
     "that cannot be read or written.",
     page_files},
    {Command::register_items, "register", "LOG...", "List the samples, photos and notes of logs.",
     "One row each, in the order of the logs, with station, unit, date, time and\n"
     "position. A remark that stands beside no reading counts as a note.\n"
     "\n"
     "  lodebook register day1.txt day2.txt -o season.csv\n"
     "  lodebook register *.txt -o samples.geojson\n"
     "\n"
     "Exit status: 0 good, 1 errors in a log, 2 a wrong command line, 3 a file that\n"
     "cannot be read or written.",
     register_formats, "lodebook-register"},
    {Command::explain, "explain", "[CODE]", "Explain a diagnostic, with an example and the remedy.",
     "CODE is the word in brackets at the end of a diagnostic; without it, all codes\n"
     "are listed.\n"
     "\n"
     "  lodebook explain dip-side-missing"},
    {Command::help, "help", "[COMMAND]", "Show help, or the log language on one page.",
     "`lodebook help log` shows the log language on one page, and\n"
     "`lodebook help log --blank` prints a heading to start a log from:\n"
     "\n"
     "  lodebook help log --blank > day1.txt"},
}};

static_assert(command_count <= 16, "OptionSpec::commands has a bit for each");
constexpr std::uint16_t of(Command command) {
  return static_cast<std::uint16_t>(1U << static_cast<unsigned>(command));
}
constexpr std::uint16_t of_reduce = of(Command::reduce);
constexpr std::uint16_t of_reports = of_reduce | of(Command::check);
constexpr std::uint16_t of_fix = of(Command::fix);
constexpr std::uint16_t of_summary = of(Command::summary);
constexpr std::uint16_t of_net = of(Command::net);
constexpr std::uint16_t of_rose = of(Command::rose);
constexpr std::uint16_t of_groups = of_summary | of_net | of_rose;
constexpr std::uint16_t of_selections = of_groups | of(Command::map);
constexpr std::uint16_t of_register = of(Command::register_items);
constexpr std::uint16_t of_logs =
    of_reports | of_fix | of_selections | of(Command::sheet) | of_register;
constexpr std::uint16_t of_batches = of_reports | of_fix | of_groups | of_register;
constexpr std::uint16_t of_convert = of(Command::convert);
constexpr std::uint16_t of_notation =
    of_reports | of_summary | of_net | of(Command::sheet) | of_convert;
constexpr std::uint16_t of_declination = of(Command::declination);
constexpr std::uint16_t of_fair_copy = of(Command::fair_copy);
constexpr std::uint16_t of_readers = of_logs | of_convert;
constexpr std::uint16_t of_inputs = of_readers | of_fair_copy;
constexpr std::uint16_t of_all = (1U << command_count) - 1;

constexpr std::array<std::string_view, 3> norths = {"true", "magnetic", "grid"};
constexpr std::array<std::string_view, 2> rules = {"right", "left"};
constexpr std::array<std::string_view, 2> repeats = {"each", "mean"};
constexpr std::array<std::string_view, 2> planes_as = {"strike", "direction"};
constexpr std::array<std::string_view, 6> orders = {"strike/dip", "direction/dip", "dip/direction",
                                                    "dip/strike", "trend/plunge",  "plunge/trend"};
constexpr std::array<std::string_view, 2> notations = {"azimuth", "quadrant"};
constexpr std::array<std::string_view, 3> shapes = {"bearing", "plane", "line"};
constexpr std::array<std::string_view, 3> report_formats = {"text", "json", "lines"};
constexpr std::array<std::string_view, 2> answer_formats = {"text", "json"};
constexpr std::array<std::string_view, 4> fix_formats = {"text", "json", "csv", "geojson"};
constexpr std::array<std::string_view, 3> summary_formats = {"text", "json", "csv"};
constexpr std::array<std::string_view, 7> bins = {"2", "5", "10", "15", "20", "30", "45"};
constexpr std::array<std::string_view, 2> encodings = {"utf-8", "windows-1252"};
constexpr std::array<std::string_view, 3> colors = {"auto", "always", "never"};
constexpr std::span<const std::string_view> any;

constexpr std::array<OptionVariant, 4> other_formats = {{
    {Command::declination, answer_formats, "text (default) or json"},
    {Command::fix, fix_formats,
     "text, json, csv or geojson; without it, by\nFILE's extension, else text"},
    {Command::summary, summary_formats,
     "text, json or csv; without it, by FILE's\nextension, else text"},
    {Command::register_items, register_formats,
     "csv, json or geojson; without it, by FILE's\nextension, else csv"},
}};

constexpr std::array<OptionSpec, option_count> option_table = {{
    {Option::output, "output", 'o', "FILE", any, of_inputs, false,
     "write to FILE, all of it or nothing"},
    {Option::format, "format", 0, "FORMAT", formats,
     of_reduce | of_declination | of_fix | of_summary | of_register, false,
     "csv, json, geojson or log (a clean log);\n"
     "without it, by FILE's extension, else csv",
     other_formats},
    {Option::rays, "rays", 0, "FILE", any, of_fix, false,
     "also write sight lines, error ellipses and legs\n"
     "to FILE, as GeoJSON"},
    {Option::sidecar, "sidecar", 0, "", any, of_reduce, false,
     "for a GIS: beside FILE.csv write FILE.csvt and\n"
     "FILE.prj too, so that its rows become points"},
    {Option::north, "north", 0, "NORTH", norths, of_reduce | of_convert | of_groups, false,
     "the north of the output: true (default), magnetic\n"
     "or grid, that of the station's UTM zone"},
    {Option::declination, "declination", 0, "ANGLE", any, of_readers, false,
     "the declination, such as 24.6E; or model, from\n"
     "each station's place and date; or as-set. A\n"
     "log's own setting takes precedence"},
    {Option::set, "set", 0, "ANGLE", any, of_readers, false,
     "what was turned into the dial, such as 0 or 12E"},
    {Option::rule, "rule", 0, "HAND", rules, of_readers, false,
     "right or left: the side that goes down, as you\n"
     "look along the strike as typed"},
    {Option::heading, "heading", 0, "FILE", any, of_logs | of_fair_copy, false,
     "a file whose lines stand before those of each\n"
     "log: settings, kinds, short words, landmarks"},
    {Option::grid, "grid", 0, "", any, of_reduce, false, "add columns easting, northing and zone"},
    {Option::attributes, "attributes", 0, "KEYS", any, of_reduce, false,
     "add columns of values in the remarks: spacing,infill\n"
     "are those of `; spacing=0.3m infill=clay`"},
    {Option::repeats, "repeats", 0, "HOW", repeats, of_reduce | of_groups, false,
     "each: a row or mark for every reading; mean: one\n"
     "for the repeats of a surface, at their mean"},
    {Option::by, "by", 0, "WHAT", any, of_groups, false,
     "groups within each kind: unit, station, or\n"
     "unit,station"},
    {Option::kind, "kind", 0, "KIND", any, of_selections, true,
     "only these kinds, such as bedding,cleavage"},
    {Option::without_suspect, "without-suspect", 0, "", any, of_selections, false,
     "leave suspect readings out"},
    {Option::poles, "poles", 0, "", any, of_net, false, "planes as poles (default)"},
    {Option::circles, "circles", 0, "", any, of_net, false, "planes as great circles"},
    {Option::contours, "contours", 0, "", any, of_net, false,
     "density contours after Kamb, a net for each kind"},
    {Option::bin, "bin", 0, "WIDTH", bins, of_rose, false,
     "width of a petal in degrees: 2, 5, 10 (default),\n"
     "15, 20, 30 or 45"},
    {Option::notation, "notation", 0, "PLANES", planes_as, of_notation, false,
     "for people to read: planes by their strike and\n"
     "dip (usual), or by dip > direction; never\n"
     "changes the table"},
    {Option::to, "to", 0, "NOTATION", notations, of_convert, false,
     "azimuth (default) or quadrant"},
    {Option::order, "order", 0, "ORDER", orders, of_convert, true,
     "how pairs of bare numbers are written: of planes\n"
     "strike/dip, dip/strike, direction/dip or\n"
     "dip/direction, of lines trend/plunge or\n"
     "plunge/trend"},
    {Option::as, "as", 0, "WHAT", shapes, of_convert, false,
     "what the readings are: bearing, plane or line"},
    {Option::column, "column", 0, "NAME", any, of_convert, true,
     "convert this column of a CSV file; may be given\n"
     "more than once"},
    {Option::elevation, "elevation", 0, "HEIGHT", any, of_declination, false,
     "metres above sea level, or with ft; default 0"},
    {Option::report, "report", 0, "FILE", any, of_reports, false, "write the report to FILE"},
    {Option::report_format, "report-format", 0, "FORMAT", report_formats, of_reports, false,
     "text (default), json, or lines: for an editor,\n"
     "one line for each diagnostic"},
    {Option::watch, "watch", 0, "", any, of(Command::check), false,
     "read again whenever a log is saved; Ctrl-C ends"},
    {Option::jobs, "jobs", 0, "N", any, of_batches, false,
     "work on N logs at once, 1 to 256; without it, as\n"
     "many as there are processors"},
    {Option::strict, "strict", 0, "", any, of_logs, false, "exit status 1 for warnings, too"},
    {Option::encoding, "encoding", 0, "NAME", encodings, of_inputs, false,
     "of the input: utf-8 (default) or windows-1252"},
    {Option::color, "color", 0, "WHEN", colors, of_all, false, "auto (default), always or never"},
    {Option::quiet, "quiet", 'q', "", any, of_all, false, "no report or diagnostics on the screen"},
    {Option::blank, "blank", 0, "", any, of(Command::help), false,
     "with `help log`: a heading to start from"},
    {Option::help, "help", 'h', "", any, of_all, false, "this help"},
    {Option::version, "version", 0, "", any, of_all, false,
     "the program's version and geomagnetic models"},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < option_table.size(); ++i) {
    if (static_cast<std::size_t>(option_table[i].option) != i) return false;
  }
  for (std::size_t i = 0; i < command_table.size(); ++i) {
    if (static_cast<std::size_t>(command_table[i].command) != i) return false;
  }
  return true;
}
static_assert(in_order());

}  // namespace

std::span<const CommandSpec> commands() {
  return command_table;
}

const CommandSpec* command_named(std::string_view name) {
  const auto found = std::ranges::find(command_table, name, &CommandSpec::name);
  return found == command_table.end() ? nullptr : &*found;
}

std::span<const OptionSpec> options() {
  return option_table;
}

OptionSpec as_taken_by(std::optional<Command> command, const OptionSpec& option) {
  OptionSpec taken = option;
  for (const OptionVariant& variant : option.variants) {
    if (command != variant.command) continue;
    taken.choices = variant.choices;
    taken.help = variant.help;
  }
  return taken;
}

const OptionSpec* option_named(std::string_view long_name) {
  const auto found = std::ranges::find(option_table, long_name, &OptionSpec::long_name);
  return found == option_table.end() ? nullptr : &*found;
}

const OptionSpec* option_lettered(char short_name) {
  const auto found = std::ranges::find(option_table, short_name, &OptionSpec::short_name);
  return short_name == 0 || found == option_table.end() ? nullptr : &*found;
}

}  // namespace lodebook::cli
