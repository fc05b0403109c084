// SPDX-License-Identifier: MIT
#include "columns.hpp"

#include <algorithm>
#include <utility>

namespace lodebook::fair_copy {

namespace {

struct Name {
  Column column;
  std::string_view names;
};

/// Headings as people write them in English and other languages, folded, parted by commas.
constexpr Name names[] = {
    {Column::index,
     "no,nr,n°,nº,№,#,num,number,id,sl no,s no,sr no,srl,ser,ref,row,lfd nr,lnr,item,reading no"},
    {Column::station,
     "station,sta,stn,st,stop,site,loc,locality,point,pt,outcrop,waypoint,wp,location,from,frm,von,"
     "de,desde,da,fra,station from,from station,from stn,at,inst at,setup"},
    {Column::to,
     "to,to station,to stn,nach,zu,hacia,hasta,vers,til,end station,foresight to,to point,"
     "to pt,target,mark,landmark,sighted,sight to,object,sight"},
    {Column::kind,
     "kind,type,feature,structure,element,measurement,feat,feature type,plane type,"
     "plane,struct,typ,art,tipo,fläche,struktur,gefüge,estructura,elemento,kode,"
     "discontinuity"},
    {Column::surface, "surface,surface type,nature,what,code"},
    {Column::set, "set,set no,joint set,joint set no,family,familia,schar"},
    {Column::date, "date,datum,fecha,dato,data,day"},
    {Column::strike, "strike,str,strike az,strike azimuth,strike dir,strike direction,strk"},
    {Column::dip, "dip,dip angle,dip amount,manteo,fallwinkel,true dip"},
    {Column::side,
     "dip to,dips to,side,dip side,dip quadrant,quad,quadrant,dip letter,toward,towards,dipto,"
     "dips,dips toward,dips towards,lado,seite,côté,cote,lato,lade,letter,dip towards,dip toward"},
    {Column::direction,
     "dip direction,dip dir,dipdir,dip azimuth,dip az,ddir,dip dirn,dir,direction,dip brg,"
     "dipdirection,azimuth of dip,dipaz,dd,dipazimuth,dip bearing"},
    {Column::bearing,
     "azimuth,az,bearing,azim,brg,fs,foresight,fore sight,fore,forward,fwd,fore bearing,compass,"
     "mag bearing,brng,azimut,peilung,bear,f s,forward bearing,fore brg"},
    {Column::trend, "trend,trd,trend az,trend azimuth"},
    {Column::plunge, "plunge,pl,plg,plng"},
    {Column::rake, "rake,pitch,rake angle,pitch angle"},
    {Column::end,
     "from which end,rake from,pitch from,from end,end,rake end,pitch end,which end,rake dir,"
     "rake direction,rake quadrant,rake side,measured from,pitch dir,pitch direction"},
    {Column::facing, "facing,way up,younging,polarity,youngs"},
    {Column::sense, "sense,movement,slip,slip sense,shear sense,mvt,motion,kinematics"},
    {Column::back,
     "back,back bearing,bs,backsight,back sight,back brg,bb,b s,reverse,rev,reverse bearing,back "
     "az,back azimuth,bk,bkwd,bck,rev bearing,rev brg,bk brg"},
    {Column::distance,
     "distance,dist,tape,taped,length,len,chain,chained,distancia,länge,distanz,distanza,lengde,"
     "avstand,longueur,largo,longitud de tramo,paces,pace,slope dist,slope distance,tape length"},
    {Column::slope,
     "slope,clino,clinometer,incl,inclination,inclinación,grade,gradient,vertical angle,vert,va,"
     "vert angle,v angle,vertical,neigung,pente,gefälle,stigning"},
    {Column::remark,
     "remark,remarks,comment,comments,note,notes,description,descr,desc,bemerkung,bemerkungen,"
     "observaciones,remarque,remarques,merknad,anm,filling,infill,notas"},
    {Column::latitude, "latitude,lat"},
    {Column::longitude, "longitude,lon,long,lng"},
    {Column::zone, "zone,utm zone"},
    {Column::easting, "easting,east,e,me,m e,utm e,utm easting,x"},
    {Column::northing, "northing,north,n,mn,m n,utm n,utm northing,y"},
    {Column::on, "on,on plane,in plane,on kind"},
    {Column::elevation, "elevation,elev,alt,altitude,z"},
};

/// Those whose slope is an angle, or a word for one, not a grade.
constexpr std::string_view angles[] = {"clino",       "clinometer",     "incl",    "inclination",
                                       "inclinación", "vertical angle", "vert",    "vertical angle",
                                       "va",          "vert angle",     "v angle", "vertical",
                                       "neigung"};

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

/// As the names above: folded, without brackets and what marks degrees.
std::string plain(std::string_view heading) {
  std::string text(heading.substr(0, heading.find_first_of("([,")));
  for (const std::string_view mark : {"°", "º", "%"}) {
    for (std::size_t at = text.find(mark); at != std::string::npos && text.size() > mark.size() + 1;
         at = text.find(mark))
      text.erase(at, mark.size());
  }
  std::ranges::replace(text, '_', ' ');
  return std::string(trimmed(folded(text)));
}

std::optional<Column> named(std::string_view name) {
  for (const Name& row : names) {
    for (std::size_t begin = 0; begin <= row.names.size();) {
      const std::size_t end = std::min(row.names.find(',', begin), row.names.size());
      if (row.names.substr(begin, end - begin) == name) return row.column;
      begin = end + 1;
    }
  }
  return std::nullopt;
}

/// By the words of the trade, and those that the page declared.
std::optional<Column> known(const std::string& name, const Words& words) {
  const auto word = words.find(name);
  if (!word) return std::nullopt;
  switch (word->meaning) {
    case Meaning::strike:
      return Column::strike;
    case Meaning::dip:
      return Column::dip;
    case Meaning::direction:
      return Column::direction;
    case Meaning::trend:
      return Column::trend;
    case Meaning::plunge:
      return Column::plunge;
    case Meaning::rake:
      return Column::rake;
    case Meaning::facing:
    case Meaning::youngs:
      return Column::facing;
    case Meaning::slope:
      return Column::slope;
    case Meaning::back:
      return Column::back;
    case Meaning::station:
      return Column::station;
    default:
      return std::nullopt;
  }
}

/// The column of a heading without its unit: the page's own word for it first.
std::optional<Column> column_of(const std::string& name, const Words& words) {
  if (words.is_own(name)) {
    if (const auto own = known(name, words)) return own;
  }
  if (const auto column = named(name)) return column;
  if (const auto column = known(name, words)) return column;
  for (const std::string_view word : {"remark", "note", "comment"}) {
    if (name.find(word) != std::string::npos) return Column::remark;
  }
  // `sense of the fault`, `rake of striae`
  if (const std::size_t of = name.find(" of "); of != std::string::npos)
    return named(std::string_view(name).substr(0, of));
  return std::nullopt;
}

/// Both ends of a leg in one column.
constexpr std::string_view both_ends[] = {"leg",      "trav leg", "from to",           "line",
                                          "stations", "course",   "station to station"};

/// `dip/dd`, `trend-plunge`: what its two parts hold; nothing for another heading.
std::optional<std::pair<Column, Column>> pair_of(std::string_view typed, const Words& words) {
  if (std::ranges::find(both_ends, std::string_view(plain(typed))) != std::end(both_ends))
    return std::pair{Column::station, Column::to};
  for (const std::string_view mark : {"/", ">", "-", "@", " & ", " and "}) {
    const std::size_t at = typed.find(mark);
    if (at == std::string_view::npos || at == 0) continue;
    const auto first = column_of(plain(trimmed(typed.substr(0, at))), words);
    const auto second = column_of(plain(trimmed(typed.substr(at + mark.size()))), words);
    if (!first || !second) continue;
    if (*first == Column::station && *second == Column::to) return std::pair{*first, *second};
    if ((is_angle(*first) && is_bearing(*second)) || (is_bearing(*first) && is_angle(*second)))
      return std::pair{*first, *second};
  }
  return std::nullopt;
}

}  // namespace

bool is_angle(Column column) {
  return column == Column::dip || column == Column::plunge || column == Column::rake;
}

bool is_bearing(Column column) {
  return column == Column::strike || column == Column::direction || column == Column::trend ||
         column == Column::bearing;
}

namespace {

Heading heading_of(const Cell& cell, const Words& words) {
  Heading heading;
  heading.name = cell.text;
  heading.span = cell.span;
  const std::string whole = plain(cell.text);
  std::string name = whole;
  // `dist (m)`, `slope %`, `tape ft`
  const std::size_t bracket = cell.text.find_first_of("([");
  if (bracket != std::string::npos) {
    const std::size_t end = std::min(cell.text.find_first_of(")]", bracket), cell.text.size());
    heading.unit = unit_named(
        trimmed(std::string_view(cell.text).substr(bracket + 1, end - std::min(end, bracket + 1))));
  } else if (const std::size_t blank = whole.rfind(' '); blank != std::string::npos) {
    heading.unit = unit_named(std::string_view(whole).substr(blank + 1));
    if (heading.unit != Unit::none) name = whole.substr(0, blank);
  }
  for (const std::string_view mark : {"°", "º", "%"}) {
    if (heading.unit == Unit::none && cell.text.size() > mark.size() && cell.text.ends_with(mark))
      heading.unit = unit_named(mark);
  }
  if (const auto pair = pair_of(cell.text, words)) {
    heading.column = pair->first;
    heading.second = pair->second;
    return heading;
  }
  const bool is_length = heading.unit == Unit::other;
  if (!is_length) heading.column = column_of(name, words).value_or(Column::other);
  if (name == "paces" || name == "pace") heading.unit = Unit::paces;
  heading.is_angle = std::ranges::find(angles, std::string_view(name)) != std::end(angles);
  return heading;
}

}  // namespace

std::vector<Heading> headings_in(std::string_view line, Separator separator, const Words& words) {
  std::vector<Heading> headings;
  for (Cell& cell : cells_in(line, separator)) {
    // `fault tables: no | strike | dip`
    if (const std::size_t colon = cell.text.rfind(": ");
        headings.empty() && colon != std::string::npos) {
      cell.span.begin += cell.text.find_first_not_of(' ', colon + 1);
      cell.text = trimmed(std::string_view(cell.text).substr(colon + 1));
    }
    // A heading that is a comment to other readers.
    if (headings.empty() && cell.text.starts_with("# ")) cell.text.erase(0, 2);
    headings.push_back(heading_of(cell, words));
  }
  return headings;
}

}  // namespace lodebook::fair_copy
