// SPDX-License-Identifier: MIT
#include "words_abroad.hpp"

#include <algorithm>
#include <lodebook/notebook/notebook.hpp>

#include "nouns.hpp"
#include "spelling.hpp"

namespace lodebook::fair_copy {

namespace {

using enum Meaning;

constexpr WordRow table[] = {
    // ---- kinds
    {kind, "bedding",
     "bedding,bed,bedding plane,beds,strata,stratum,layering,s0,bdg,bd,bedd,bedng"},
    {kind, "foliation", "foliation,fol,foln,s1,s2,s3,gneissosity,gneissic foliation,banding"},
    {kind, "cleavage", "cleavage,clvg,cleav,clv,slaty cleavage,crenulation cleavage"},
    {kind, "schistosity", "schistosity,schist plane"},
    {kind, "joint", "joint,jt,jnt,jn,j1,j2,j3,j4,fracture,master joint,joint face,parting"},
    {kind, "fault", "fault,flt,fault plane,thrust,thrust fault,fault surface,f plane"},
    {kind, "shear", "shear,shear band,mylonite,mylonite zone,shear zone,shear plane,shr,sz"},
    {kind, "vein", "vein,vn,veinlet,quartz vein,calcite vein,tension gash,gash,stringer"},
    {kind, "dike", "dike,dyke,dyke margin,dike margin"},
    {kind, "contact", "contact,ctct,cont,contact plane,unconformity"},
    {kind, "axial-plane",
     "axial plane,ax pl,ax plane,axial surface,fold axial plane,ap,axial planar cleavage"},
    {kind, "lineation", "lineation,lin,lineat,l1,l2,mineral lineation"},
    {kind, "slickenline",
     "slickenline,slick,slicks,slickenside striae,slickenside striation,slicken,slickenfibre,"
     "slickenfiber,slickenside lineation,slickenside"},
    {kind, "fold-axis",
     "fold axis,fold hinge,hinge,hinge line,fold,fold axe,axis of fold,axis of small fold,"
     "small fold,minor fold,fa,fold hinge line,minor fold axis,small fold axis,fold "
     "axes,crenulation axis,crenulation axes,minor fold axes"},
    {kind, "intersection", "intersection,intersection lineation,int lin,intersect"},
    {kind, "stretching",
     "stretching,stretching lin,stretching lineation,stretch lineation,str lin"},
    {kind, "flute", "flute,flute cast,flute mark"},
    {kind, "current",
     "current,pc,palaeocurrent,paleocurrent,flow,palaeoflow,paleoflow,current ripple"},
    {kind, "striation", "striation,stria,striae,glacial striae,glacial striation"},
    {kind, "alignment",
     "alignment,drumlin axis,drumlin long axis,drumlin,esker,esker ridge,esker axis"},
    {kind, "groove", "groove,groove cast,glacial groove"},
    {kind, "crest", "crest,ripple crest,wave ripple crest"},
    // ---- how a reading is put
    {sight, "",
     "sight,sights,sighted,shot,shots,shoot,bearing to,bearing on,brg to,brg,brgs,sighting,"
     "sightings,fb,fore bearing,forward bearing,foresight,bears,bearing,bearings,seen at,bearings "
     "taken,bearings to"},
    {leg, "", "leg,traverse,paced,chained,taped"},
    {strike, "", "strike,strikes,striking,str,stk"},
    {dip, "", "dip,dips,dipping,dp"},
    {direction, "",
     "dip direction,dd,dip dir,dipdir,dip azimuth,dip az,dipdirection,ddir,dip dirn"},
    {trend, "", "trend,trends,trending,tr,azim,az"},
    {plunge, "", "plunge,plunges,plunging,pl,plg"},
    {rake, "", "rake,rakes,raking,pitch,pitches,pitching"},
    {toward, "", "to,toward,towards,to the,towards the,toward the,twd,due,nach,vers"},
    {from, "", "from,from the,off"},
    {on, "",
     "on,in,on it,in it,on this one,on the last one,on this,within,on the,on same,on the same,in "
     "the,in this"},
    {slope, "", "clino,inclination,incl,slope,grade,vertical angle,va,clinometer"},
    {back, "", "back,back bearing,back brg,backsight,bs,back sight,reverse bearing,bb"},
    {up, "", "up,raised,went up,rising,rises,rise,climbing"},
    {down, "", "down,dropped,lowered,went down,dn,falling,falls,fall,dropping"},
    {level, "", "level,on the level"},
    {south_end, "", "south end,s end,south end of the needle,s end of the needle,s end of needle"},
    {end, "", "end"},
    {north_of, "grid", "grid,grid north"},
    {north_of, "true", "true,true north"},
    {north_of, "magnetic", "magnetic,mag"},
    {filler, "",
     "sub vert,sub vertical,subvert,subvertical,sub horiz,sub horizontal,steep,gentle,"
     "gently dipping,steeply dipping,shallow,flattish,subhorizontal"},
    {vertical, "", "vertical,vert,upright plane"},
    {horizontal, "", "horizontal,horiz,flat,flat lying,hor"},
    // ---- what is said of it
    {facing, "upright",
     "upright,right side up,right way,right way up,r w up,rwu,way up normal,normal lying,not "
     "overturned,normal bedding,polarity normal,normal polarity"},
    {facing, "overturned",
     "overturned,o/t,ot,o t,inv,inverted,inverse,upside dn,upside down,ovt,overt,ov,polarity "
     "inverted,"
     "polarity inverse,polarity reversed,inverted polarity,inverse polarity,reversed polarity"},
    {facing, "unknown",
     "facing unknown,facing not seen,way up unknown,way up not seen,no way up,facing not known,"
     "younging unknown,way up unclear,facing unclear,way up uncertain"},
    {youngs, "", "youngs,yg,yng,yngs,younging,youngs to,youngs to the,faces,facing,younging to"},
    {sense, "normal",
     "hanging wall down,hanging wall dropped,hw down,hw dropped,footwall up,fw up,normal,normal "
     "sense,normal movement,nor,norm"},
    {sense, "reverse",
     "hanging wall up,hw up,footwall down,fw down,footwall dropped,reverse,reversed,reverse "
     "sense,reverse movement,rev"},
    {sense, "dextral", "dextral,right lateral,dextral sense,dex,dext"},
    {sense, "sinistral", "sinistral,left lateral,sinistral sense,sin,sinis"},
    {downthrow, "", "downthrow,downthrown,downthrows,downthrow to,downthrown to,throws down,dt"},
    {upthrow, "", "upthrow,upthrown,upthrows"},
    {way_up, "",
     "way up,which way up,which way is up,younging direction,facing direction,way up criteria,"
     "which way it faces,which way it youngs,polarity,stratigraphic up"},
    {top_to, "", "top to,top to the,top moved to,hanging wall to"},
    {block, "", "side,block,wall,side is,block is"},
    {place, "",
     "verging "
     "to,limb,bank,corner,slope,shore,edge,part,half,flank,margin,verges,verging,vergence,road,"
     "track,wall,"
     "wall of,side of,end of,creek,river,ridge,quarry,of,facing slope,pier,cliff,gully,wing"},
    {doubt, "",
     "?,??,???,check,recheck,to check,may have,may be,might be,might have,might,could "
     "be,moved,slid,slipped,loose,loose "
     "block,not in place,"
     "not in situ,disturbed,doubtful,dubious,unsure,not sure,uncertain,poor,iffy,maybe,might be "
     "float,suspect,"
     "questionable,perhaps,possibly,float,hard to see,not reliable,unreliable,not to be trusted,"
     "out of reach,by eye,eyeballed,poss,prob,probably,could be float,guess,i think,i "
     "guess,estimated,est"},
    {rough, "", "~,ca,c,say,approx,about,abt,approximately,circa,roughly"},
    {ditto, "",
     "\",'',do,ditto,as above,as before,as last,same as above,same,repeat,repeated,the "
     "same,again,idem,id,dto"},
    {all, "", "all,both,each"},
    {together, "", "and,&,und,et,plus"},
    {either, "", "or,either,else"},
    {mean, "", "mean,average,avg,mean of,average of"},
    {contrary, "",
     "not,wrong,oops,cross out,crossed out,scrap,delete,ignore,backwards,mistake,error,no,"
     "except,instead,should be,correction,corrected,sorry,was,but"},
    {unread, "",
     "not visible,not exposed,plunge not visible,plunge not seen,plunge not read,plunge not "
     "measured,no plunge,plunge unknown,dip not seen,"
     "no reading,not measured,not read,unmeasured,no readings,no measurement"},
    // ---- what shows a figure to be no reading
    {unit, "",
     "cm,mm,km,dm,kg,min,mins,minutes,hrs,hours,years,yr,ka,ma,pct,percent,mpa,kpa,litre,ml,"
     "l/"
     "min,rod,rods,chain,chains,link,links,sec,secs,days,mi,miles,yds,yards,inch,inches,times,"
     "μm,um,ppm,ppb,l/s,lps,lpm,m3/s,m/s,degc,us/cm,ms/cm,hz,khz,mv,gpm,psi"},
    {metres, "",
     "m,metre,meter,metres,meters,mtr,mtrs,moh,m o h,msnm,m s n m,m ü m,masl,m a s l,m asl"},
    {feet, "", "ft,foot,feet"},
    {paces, "", "pace,paces,step,steps,pcs"},
    {label, "",
     "photo,photos,pic,picture,sample,spec,specimen,spacing,sp,spaced,trace,persistence,jrc,jcs,"
     "ucs,rqd,thickness,thick,width,no,nr,number,fig,figure,sheet,page,pg,ch,chainage,"
     "fm,formation,unit,layer,zone,level no,notebook,nb,bag,core,depth,throw,offset,gps,"
     "ec,ph,gsi,rmr,class,temp,temperature,frame,frames,day,trip,img,dsc,throw c,offset "
     "c,amplitude,wavelength,weathering,wpt,file,roll,film"},
    {ordinal, "", "1st,2nd,3rd,4th,first,second,third"},
    {filler, "",
     "is,are,other,another,better,good,the,a,an,it,its,with,bg,one,two,surface,plane,dir,main,"
     "clean,here,there,at,of,top,base,upper,lower,next,more,same set,sharp"},
    {where, "",
     "near,beside,below,above,under,over,along,across,behind,opposite,between,around,past,against,"
     "inside,outside,beneath,alongside,upstream,downstream,uphill,downhill,upslope,downslope,"
     "nearby,further,farther,next to,close to,just above,just below,left of,right of"},
    {which, "",
     "older,younger,once more,checked,rechecked,re checked,measured,remeasured,re measured,reads,"
     "no sense,sense unclear,sense not seen,sense unknown,sense not clear,no sense seen,offset not "
     "seen,no offset seen,offset unclear,offset unknown,throw not seen,throw unknown,slip not "
     "seen"},
    {so, "", "i e,ie,so,thus,hence,that is,therefore"},
    {slip, "90", "dip slip,pure dip slip,down dip,straight down dip"},
    {slip, "0", "strike slip,pure strike slip,along strike"},
    // ---- headings
    {station, "",
     "station,sta,st,stn,stop,loc,locality,pt,point,site,outcrop,oc,o/c,pos,posn,location,"
     "stat,stp,waypoint,station no,loc no,stop no,wp,aufschluss,halt,exposure,locn"},
    {station, "window", "window"},
    {station, "hole", "hole,borehole"},
    {station, "peg", "peg"},
    {station, "Ch", "face ch,face chainage"},
    {month, "1", "january,jan,januar,janvier"},
    {month, "2", "february,feb,februar"},
    {month, "3", "march,mar,märz,mars"},
    {month, "4", "april,apr,avril"},
    {month, "5", "may,mai"},
    {month, "6", "june,jun,juni,juin"},
    {month, "7", "july,jul,juli,juillet"},
    {month, "8", "august,aug"},
    {month, "9", "september,sept,sep"},
    {month, "10", "october,oct,oktober,okt"},
    {month, "11", "november,nov"},
    {month, "12", "december,dec,dezember,dez"},
    {weekday, "1", "monday,mon,montag"},
    {weekday, "2", "tuesday,tues,tue,dienstag"},
    {weekday, "3", "wednesday,wed,weds,mittwoch"},
    {weekday, "4", "thursday,thurs,thur,thu,donnerstag"},
    {weekday, "5", "friday,fri,freitag"},
    {weekday, "6", "saturday,sat,samstag"},
    {weekday, "7", "sunday,sun,sonntag"},
    {declination, "",
     "declination,decl,decln,dec,magnetic declination,mag dec,mag decl,mag var,variation,"
     "magnetic variation,mag variation,var,magvar,md,dek,deklination,mag declination,dekl"},
    {dialled, "",
     "set on,set on dial,set on the dial,set on compass,set on the compass,turned in,dialled in,"
     "dialed in,set in,on the dial,on dial,on the compass,set on my compass,already turned in,"
     "dial set to,dial set,set to,compass set to,compass set,applied,corrected for,"
     "already set,allowed for,turned into the dial,turned in on the dial,set off,dialled,"
     "already in,already in it,already in the compass,is in the compass,in the dial,"
     "already turned in on the dial,set on my dial,adjusted for,built in,put on the dial,put on "
     "it,put in,compensated,compensated for,"
     "taken into account,included,"
     "adjusted,corrected,turned into,compass corrected,dialled into the compass,"
     "already on the dial,put on the compass,set up for,dial at,dial on"},
    {set_word, "", "set"},
    {same, "", "same as,as map,as on map,as the map,same as map,same as the map"},
    {none, "",
     "nothing,zero,none,nil,unset,unadjusted,uncorrected,not set,not applied,not turned in,"
     "not set on,not set on compass,not set on the compass,not set on dial,"
     "not set on the dial,not dialled in,not dialed in,nothing set,not corrected,"
     "not on the dial,not on the compass,not adjusted,nothing turned in,nothing dialled in,"
     "nothing set on the dial,none set,no correction,not allowed for,not corrected for,"
     "nothing turned into the dial,not turned into,nothing set on dial,not put on,"
     "nothing applied,not taken off,nothing on the dial,nobody set,nobody set it,not turned "
     "off,none turned in"},
    {rule, "right", "right hand rule,rhr,rh rule,right hand,r h r,rh,righthand rule"},
    {rule, "left", "left hand rule,lhr,lh rule,left hand,l h r,lh,lefthand rule"},
    {order, "",
     "order,planes,plane,lines,all planes,all lines,planar,linear,pairs,format,orientation,"
     "orientations,attitudes,readings,measurements,notation"},
    {pace, "", "my pace,my step,one step,one pace,1 pace,pace length,pace =,of my paces"},
    {observer, "", "observer,obs,recorder,recorded by,measured by,me,geologist,name,by,surveyor"},
    {quadrant, "", "quadrant,quadrants,quadrant compass,quadrant dial,quadrant bearings,quads"},
    {azimuth, "",
     "azimuth,azimuths,azimuth compass,azimuth dial,360s,360 compass,whole circle,whole circle "
     "bearings,wcb,0 360"},
    {accuracy, "", "accuracy,acc,±,+/-,gps acc,precision"},
    {marks, "",
     "known,marks,landmarks,marks we could see,marks seen,targets,known marks,landmarks used,marks "
     "used,"
     "sight points,known points"},
    {datum, "", "datum,wgs84,wgs 84,gda2020,nzgd2000,etrs89,nad83,gda94"},
    {elevation, "",
     "elev,elevation,alt,altitude,height,asl,a s l,above sea level,amsl,masl,rl,ht,ahd,"
     "hm,nn,m ü nn"},
    {clock, "", "am,pm,a m,p m,h,hr,hrs,uhr,o'clock"},
    {area, "", "area,project,region,locality name,gebiet,job"},
};

const std::unordered_map<std::string, Word>& words_of_the_trade() {
  static const auto words = [] {
    std::unordered_map<std::string, Word> all;
    const auto add = [&](const WordRow& row) {
      for (std::size_t begin = 0; begin <= row.phrases.size();) {
        const std::size_t end = std::min(row.phrases.find(',', begin), row.phrases.size());
        all.try_emplace(std::string(row.phrases.substr(begin, end - begin)),
                        Word{row.meaning, row.says});
        begin = end + 1;
      }
    };
    std::ranges::for_each(table, add);
    std::ranges::for_each(words_abroad, add);
    for (const Noun& noun : nouns)
      add({kind, noun.name, noun.phrases});
    return all;
  }();
  return words;
}

}  // namespace

std::string folded(std::string_view text) {
  std::string lower = notebook::fold_case(text);
  std::erase(lower, '.');
  std::erase(lower, ':');
  std::ranges::replace(lower, '-', ' ');
  return lower;
}

namespace {

bool is_letter_or_digit(char c) {
  return is_letter(c) || is_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}
bool is_gap(char c) {
  return c == ' ' || c == '-' || c == '\t';
}

/// Adds a byte of a name in lower case, with one space for any gap.
void add_plain(std::string& plain, char c) {
  if (is_gap(c)) {
    if (!plain.empty() && plain.back() != ' ') plain += ' ';
  } else {
    plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
}

/// The name ends here: neither a letter nor a decimal follows.
bool is_boundary(std::string_view line, std::size_t end) {
  if (end >= line.size()) return true;
  if (is_letter_or_digit(line[end])) return false;
  const bool goes_on = line[end] == '.' || line[end] == ',' || line[end] == '+';
  const bool digit = end + 1 < line.size() && is_digit(line[end + 1]);
  return !(goes_on && digit);
}

constexpr std::size_t longest_name = 40;  ///< bytes

}  // namespace

void Words::add_name(std::string_view part, std::string_view name) {
  std::string plain;
  for (const char c : part)
    add_plain(plain, c);
  const bool telling = plain.find_first_of("0123456789 ") != std::string::npos;
  const bool has_letter = std::ranges::any_of(plain, [](char c) { return c >= 'a' && c <= 'z'; });
  if (telling && has_letter && plain.size() > 1) names_.try_emplace(std::move(plain), name);
}

Words::NameHere Words::name_at(std::string_view line, std::size_t at) const {
  NameHere found;
  if (names_.empty()) return found;
  std::string plain;
  for (std::size_t i = at; i < line.size() && i - at < longest_name; ++i) {
    add_plain(plain, line[i]);
    if (is_gap(line[i]) || !is_boundary(line, i + 1)) continue;
    if (const auto name = names_.find(plain); name != names_.end())
      found = {name->second, i + 1 - at};
  }
  return found;
}

std::optional<Word> Words::find(const std::string& phrase) const {
  const auto look = [&](const std::string& word) -> std::optional<Word> {
    if (const auto own = own_.find(word); own != own_.end()) return own->second;
    const auto& trade = words_of_the_trade();
    if (const auto known = trade.find(word); known != trade.end()) return known->second;
    return std::nullopt;
  };
  if (auto found = look(phrase)) return found;
  // `K2` where the page says that K is a joint.
  const std::size_t digits = phrase.find_last_not_of("0123456789") + 1;
  constexpr std::size_t longest_code = 3;
  if (digits > 0 && digits < phrase.size() && digits <= longest_code) {
    const auto own = own_.find(phrase.substr(0, digits));
    if (own != own_.end() && own->second.meaning == Meaning::kind) return own->second;
  }
  for (const std::string_view ending : {"s", "es"}) {
    if (phrase.size() > ending.size() + 1 && phrase.ends_with(ending)) {
      auto found = look(phrase.substr(0, phrase.size() - ending.size()));
      if (found && found->meaning == Meaning::kind) return found;
    }
  }
  return std::nullopt;
}

}  // namespace lodebook::fair_copy
