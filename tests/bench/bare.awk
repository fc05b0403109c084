# SPDX-License-Identifier: MIT
# The least that a script does to correct a season's log: declination added to every bedding's
# strike. It checks nothing, and knows only the notation of the benchmark.
BEGIN { print "station,kind,strike,dip,written,line" }
$1 == "declination" {
  declination = $2 + 0
  if ($2 ~ /W$/) declination = -declination
}
$1 == "station" { station = $2 }
$1 == "bedding" {
  angle = substr($2, 2, length($2) - 2) + 0
  east = $2 ~ /E$/
  if ($2 ~ /^S/) azimuth = east ? 180 - angle : 180 + angle
  else azimuth = east ? angle : 360 - angle
  azimuth += declination
  if (azimuth >= 360) azimuth -= 360
  if (azimuth < 0) azimuth += 360
  printf "%s,%s,%.1f,%s,%s,%d\n", station, $1, azimuth, $3, $2, NR
}
