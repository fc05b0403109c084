// SPDX-License-Identifier: MIT
// The words that random pages are made of.
#pragma once

#include <string_view>
#include <vector>

namespace lodebook::test {

/// A kind of the language, and how people write it.
struct KindWords {
  std::string_view kind;
  std::vector<std::string_view> written;
  bool has_sense = false;
};

inline const KindWords plane_kinds[] = {
    {"bedding", {"bedding", "Bedding", "bed", "S0", "bdg"}},
    {"foliation", {"foliation", "fol.", "fol"}},
    {"cleavage", {"cleavage", "cleav.", "Cleavage"}},
    {"schistosity", {"schistosity"}},
    {"joint", {"joint", "jt", "jt.", "Joint", "joints", "jts"}},
    {"fault", {"fault", "flt", "Fault"}, true},
    {"shear", {"shear", "shear zone"}},
    {"vein", {"vein", "qtz vein", "vn", "Vein"}},
    {"dike", {"dike", "dyke"}},
    {"contact", {"contact"}},
    {"axial-plane", {"axial plane", "ax. plane"}},
};
inline const KindWords line_kinds[] = {
    {"lineation", {"lineation", "lin", "lin.", "L1"}},
    {"slickenline", {"slickenlines", "slicks", "slickenline"}, true},
    {"fold-axis", {"fold axis", "fold hinge", "Fold axis"}},
    {"intersection", {"intersection"}},
    {"stretching", {"stretching lineation", "stretching"}},
    {"flute", {"flute", "flutes"}},
    {"current", {"palaeocurrent", "current"}},
};

/// Facing, sense and doubt, as the language says it and as people do.
struct Said {
  std::string_view word;
  std::string_view written;
};
inline constexpr Said facings[] = {
    {"overturned", "o/t"},  {"overturned", "overturned"}, {"overturned", "inverted"},
    {"upright", "upright"}, {"upright", "right way up"},
};
inline constexpr Said senses[] = {
    {"normal", "normal"},       {"reverse", "reverse"}, {"dextral", "dextral"},
    {"sinistral", "sinistral"}, {"dextral", "Dextral"}, {"sinistral", "sinistral"},
};

/// Behind a reading; the figures are no reading's.
inline constexpr std::string_view remarks[] = {
    "spacing 30 cm", "5 cm wide",    "weathered",      "calcite 2 mm", "clean",
    "15 m long",     "photo 12",     "planar, rough",  "sample K3",    "in the stream",
    "1.2 m thick",   "good surface", "photos 31 - 34", "10 cm apart",
};
/// Lines of their own.
inline constexpr std::string_view notes[] = {
    "grey limestone, beds 20 to 40 cm thick",
    "photo 416",
    "Photos 31-34, hammer for scale",
    "sample K3 garnet schist",
    "10:40",
    "rain",
    "contact hidden by scree",
    "fossils 3 m above the stream",
    "well exposed",
    "fine sandstone, weathered",
};
inline constexpr std::string_view areas[] = {
    "Quern Ridge, day two", "Tarr Burn and the moor above", "Quarry at Hollin Bank",
    "Mapping on Scar Fell", "Lower Ruddle valley",
};
inline constexpr std::string_view marks[] = {"Cairn", "Saddle", "Chapel"};
inline constexpr std::string_view station_words[] = {
    "Sta. ", "St ", "Pt. ", "Loc ", "Stop ", "station ", "Station ", "Stn ", "Loc. ",
};
inline constexpr std::string_view station_tails[] = {
    "", "", ":", "   foot of the waterfall, left bank", ", forest road", " - old quarry",
};

}  // namespace lodebook::test
