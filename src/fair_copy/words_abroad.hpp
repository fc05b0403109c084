// SPDX-License-Identifier: MIT
// Words of the trade in other languages, as they are found on pages typed up in English.
#pragma once

#include "words.hpp"

namespace lodebook::fair_copy {

/// German, French, Spanish, Italian, Portuguese and Norwegian; folded and separated by commas. The
/// common words of mapping schools, from memory.
inline constexpr WordRow words_abroad[] = {
    {Meaning::kind, "bedding",
     "schichtung,schicht,schichtfläche,stratification,couche,estratificación,estratificacion,"
     "capa,stratificazione,strato,strati,giacitura,acamamento,lagning,lagdeling"},
    {Meaning::kind, "schistosity",
     "schieferung,schistosité,schistosite,esquistosidad,scistosità,xistosidade,skifrighet"},
    {Meaning::kind, "foliation", "foliación,foliacion,foliazione,foliação,foliasjon"},
    {Meaning::kind, "cleavage", "clivage,clivaje,clivaggio,clivagem,kløv"},
    {Meaning::kind, "joint",
     "kluft,klüfte,kluftfläche,diaclase,diaclasa,fractura,giunto,giunti,frattura,fratture,"
     "diaclasi,junta,sprekk,sprekker"},
    {Meaning::kind, "fault",
     "störung,verwerfung,harnischfläche,faille,falla,fallas,faglia,faglie,falha,forkastning,bruch"},
    {Meaning::kind, "shear",
     "scherzone,scherfläche,zone de cisaillement,cizalla,zona de cizalla,skjærsone"},
    {Meaning::kind, "vein", "ader,filon,veine,veta,vena,vene,filone,veio,åre"},
    {Meaning::kind, "contact", "kontakt,contacto,contatto,contato,grense"},
    {Meaning::kind, "axial-plane",
     "achsenebene,achsenfläche,plan axial,plano axial,piano assiale,aksialplan"},
    {Meaning::kind, "lineation",
     "linear,lineación,lineacion,lineazione,lineação,lineasjon,linéation"},
    {Meaning::kind, "slickenline",
     "harnisch,harnischstriemung,harnisch striemung,striemung,strie,stries,estría,estrías,estrias,"
     "strie di faglia,glidestripe,glidestriper"},
    {Meaning::kind, "fold-axis",
     "faltenachse,falte,axe de pli,axe du pli,pli,eje de pliegue,pliegue,asse di piega,asse,piega,"
     "eixo de dobra,foldeakse"},
    {Meaning::strike, "", "streichen,streicht,rumbo,direzione,direção,strøk"},
    {Meaning::dip, "",
     "einfallen,fallen,fällt,pendage,buzamiento,bz,inclinazione,immersione di,mergulho,fall"},
    {Meaning::direction, "",
     "einfallsrichtung,fallrichtung,fallazimut,immersione,dirección de buzamiento,"
     "sens du pendage,direction de pendage,fallretning"},
    {Meaning::trend, "", "richtung,abtauchrichtung,azimut"},
    {Meaning::plunge, "", "abtauchen,taucht,plongement,inmersión,inmersion,caimento,stupning"},
    {Meaning::vertical, "", "saiger,senkrecht,verticale,vertikal,loddrett"},
    {Meaning::horizontal, "", "söhlig,waagrecht,horizontale,orizzontale,vannrett"},
    {Meaning::facing, "upright", "aufrecht,normal liegend,polarité normale,diritto,rettvendt"},
    {Meaning::facing, "overturned",
     "überkippt,invers,renversé,renversée,inverse "
     "série,invertida,invertido,rovesciato,rovesciata,invertert"},
    {Meaning::sense, "normal", "abschiebung,faille normale,falla normal,faglia normale"},
    {Meaning::sense, "reverse", "aufschiebung,faille inverse,falla inversa,faglia inversa"},
    {Meaning::sense, "sinistral", "linkssinnig,senestre,siniestral,sinistro"},
    {Meaning::sense, "dextral", "rechtssinnig,dextre,dextro,destro"},
    {Meaning::station, "",
     "pkt,punkt,arrêt,arret,parada,punto,lokalitet,lok,affleurement,afl,afloramiento"},
    {Meaning::declination, "",
     "missweisung,mißweisung,déclinaison,declinaison,declinación,declinacion,declinazione,"
     "misvisning,"
     "misvising,declinação"},
    {Meaning::dialled, "",
     "eingestellt,réglé,reglee,ajustado,ajustada,corregido,corregida,innstilt"},
    {Meaning::none, "",
     "nicht eingestellt,non réglé,non réglée,non corrigé,non corrigée,sin corregir,no corregido,no "
     "ajustado,"
     "non corretto,ikke korrigert,ikke innstilt,nicht korrigiert"},
    {Meaning::observer, "",
     "bearb,bearbeiter,géologue,geólogo,obs par,rilevatore,observatør,aufn,aufgenommen von"},
    {Meaning::area, "", "blatt,feuille,hoja,foglio,kartblad"},
    {Meaning::pace, "", "schrittmaß,mein schritt,mon pas,mi paso"},
    {Meaning::paces, "", "schritt,schritte,pas,pasos,passi,skritt"},
    {Meaning::label, "",
     "foto,fotos,bild,probe,échantillon,echantillon,muestra,campione,prøve,abstand,tag,proben,esp,"
     "espaciado,bänke"},
    {Meaning::north_of, "grid", "gitter"},
    {Meaning::together, "", "y,e,og"},
    {Meaning::doubt, "", "unsicher,fraglich,incertain,douteux,dudoso,usikker,incerto"},
    {Meaning::rough, "", "etwa,env,environ,aprox,omtrent"},
    {Meaning::order, "", "flächen,lineare,planos,líneas,lineas,plans,lignes,flater"},
};

}  // namespace lodebook::fair_copy
