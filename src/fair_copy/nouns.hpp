// SPDX-License-Identifier: MIT
// Nouns of the trade that are no kind of the language: what a page measures and calls by them
// becomes a kind of its own.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace lodebook::fair_copy {

/// What a kind is; an axis is a line whose two ends are alike.
enum class KindType : std::uint8_t { plane, line, axis };

struct Noun {
  std::string_view name;  ///< of the kind
  KindType type;
  std::string_view phrases;  ///< folded, parted by commas
};

/// Common practice of the trade, from memory.
inline constexpr std::array<Noun, 21> nouns = {{
    {"foreset", KindType::plane, "foreset,foreset plane,foreset bedding,foreset lamina"},
    {"cross-bed", KindType::plane,
     "cross bed,crossbed,cross bedding,crossbedding,x bed,xbed,xb,x bedding,cross lamination,"
     "cross strata,cross stratification"},
    {"imbrication", KindType::plane,
     "imbrication,imbr,imbricated clasts,imbricated cobbles,imbricated pebbles,imbricate clasts,"
     "imbricated gravel,imbrication plane,clast imbrication"},
    {"crevasse", KindType::plane, "crevasse"},
    {"scarp", KindType::plane,
     "scarp,head scarp,headscarp,main scarp,minor scarp,flank scarp,side scarp,fault scarp"},
    {"crack", KindType::plane, "tension crack,ground crack,crack"},
    {"slip-surface", KindType::plane,
     "slip surface,sliding surface,slide surface,slide plane,rupture surface,failure surface,"
     "failure plane"},
    {"channel-margin", KindType::plane,
     "channel margin,channel wall,channel edge,channel side,channel bank"},
    {"erosion-surface", KindType::plane, "erosion surface,erosional surface,scour surface"},
    {"slope-face", KindType::plane, "cut slope,cut slope face,slope face,cut face,quarry face"},
    {"stylolite", KindType::plane, "stylolite,stylolite seam"},
    {"kink-band", KindType::plane, "kink band,kink plane"},
    {"deformation-band", KindType::plane, "deformation band"},
    {"sill", KindType::plane, "sill,sill margin"},
    {"parting-lineation", KindType::axis,
     "parting lineation,parting lin,primary current lineation,parting step lineation"},
    {"trough-axis", KindType::line, "trough axis,trough axes,axis of trough"},
    {"channel-axis", KindType::line, "channel axis,channel axes"},
    {"clast", KindType::line,
     "clast,clast long axis,clast long axes,clast axis,clast axes,a axis,a axes,till fabric,"
     "pebble,pebble long axis,pebble long axes,clast fabric,fabric,a axis of clasts,long axis of "
     "clasts,long axes of stones,stone axes,stone axis"},
    {"column", KindType::line, "column,basalt column,cooling column"},
    {"mullion", KindType::line, "mullion,mullion axis"},
    {"boudin-axis", KindType::line, "boudin axis,boudin neck,boudin line,boudin axes"},
}};

}  // namespace lodebook::fair_copy
