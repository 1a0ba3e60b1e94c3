#!/bin/sh
# Logs temperatures, clocks, throttling, fans and load of the machine that it runs on, from the standard files of the Linux kernel,
# to a CSV that needs no declaration. One POSIX shell script; nothing is installed, nothing but `sleep` is started while it logs.
#
#   sh soakproof-logger.sh [-s SECONDS] [-n ROWS] FILE.csv
#
#   -s   seconds from row to row, 1 if left out
#   -n   stop after this many rows; else stop it with Ctrl+C
#
# Each row is written whole or, on a full disk, not at all from there on: then the script says so and stops. Its own load on the machine is a
# column of the log. Time is counted by the kernel's uptime, so that setting the clock of the machine does not disturb it. What the kernel
# has not yet written out when the power fails, usually the last half minute, is lost.
#
# Read as root, some machines tell the clock that was delivered, besides the one that was requested.
# SYSROOT stands before /sys and /proc, for trying it on a made-up tree.

set -u
LC_ALL=C
export LC_ALL
step=1
rows=0
root=${SYSROOT-}

usage() {
  echo 'usage: sh soakproof-logger.sh [-s SECONDS] [-n ROWS] FILE.csv' >&2
  exit 2
}

while getopts s:n: option; do
  case $option in
    s) step=$OPTARG ;;
    n) rows=$OPTARG ;;
    *) usage ;;
  esac
done
shift $((OPTIND - 1))
[ $# -eq 1 ] || usage
out=$1
case $step$rows in *[!0-9]*) usage ;; esac
[ "$step" -gt 0 ] || usage
if [ -e "$out" ]; then
  echo "$out is there already, and is not overwritten" >&2
  exit 2
fi

# The first line of a file in $value; '' where it cannot be read just now.
value=
take() {
  value=
  { read -r value <"$1"; } 2>/dev/null || :
}

# The same, a whole number or ''.
number() {
  take "$1"
  case $value in
    '' | - | *[!0-9-]* | ?*-*) value= ;;
  esac
}

# A name of the kernel without what a CSV or a reader could stumble on.
plain() {
  value=$(printf %s "$1" | tr -c 'A-Za-z0-9_.-' '_')
}

# What is logged: one `kind file` a line, and its column in the header.
files=
head='time [s]'
column() {
  files="$files$1 $2
"
  head="$head,$3"
}

for zone in "$root"/sys/class/thermal/thermal_zone*; do
  [ -r "$zone/temp" ] || continue
  take "$zone/type"
  plain "$value"
  column number "$zone/temp" "temp $value ${zone##*zone} [mC]"
done
for chip in "$root"/sys/class/hwmon/hwmon*; do
  take "$chip/name"
  plain "$value"
  name=$value
  for input in "$chip"/temp*_input "$chip"/fan*_input; do
    [ -r "$input" ] || continue
    sensor=${input##*/}
    sensor=${sensor%_input}
    take "$chip/${sensor}_label"
    plain "$value"
    label=${value:+ $value}
    case $sensor in
      temp*) column number "$input" "temp $name$label ${chip##*hwmon}.${sensor#temp} [mC]" ;;
      fan*) column number "$input" "fan $name$label ${chip##*hwmon}.${sensor#fan} [rpm]" ;;
    esac
  done
done
for policy in "$root"/sys/devices/system/cpu/cpufreq/policy*; do
  [ -r "$policy/scaling_cur_freq" ] && column number "$policy/scaling_cur_freq" "clock ${policy##*/} requested [kHz]"
  [ -r "$policy/cpuinfo_cur_freq" ] && column number "$policy/cpuinfo_cur_freq" "clock ${policy##*/} delivered [kHz]"
done
for device in "$root"/sys/class/thermal/cooling_device*; do
  [ -r "$device/cur_state" ] || continue
  take "$device/type"
  case $value in
    *cpufreq* | *Processor* | *devfreq* | *gpu*)
      plain "$value"
      column above "$device/cur_state" "throttled $value ${device##*device}"
      ;;
  esac
done
counter="$root/sys/devices/system/cpu/cpu0/thermal_throttle/package_throttle_count"
[ -r "$counter" ] && column rising "$counter" 'throttled package'
if [ -z "$files" ]; then
  echo 'no temperature, clock or fan is told by this kernel' >&2
  exit 1
fi
[ -r "$root/proc/stat" ] && column busy "$root/proc/stat" 'cpu load [%]'
[ -r "/proc/$$/stat" ] && column own "/proc/$$/stat" 'logger load [%]'

# Uptime in $whole seconds and $part hundredths.
uptime() {
  take "$root/proc/uptime"
  value=${value%% *}
  whole=${value%.*}
  part=${value#*.}
  part=${part#0}
}

uptime
first=$whole
epoch=$(date +%s)
before_rising=
before_total=
before_busy=
before_own=
before_at=

# Tenths of a per cent of $1 in $2, as text with one decimal.
percent() {
  value=
  [ "$2" -gt 0 ] || return 0
  value=$((($1 * 1000 + $2 / 2) / $2))
  value=$((value / 10)).$((value % 10))
}

# Whether a counter has risen since the row before.
rising() {
  number "$1"
  now=$value
  value=
  [ -n "$now" ] && [ -n "$before_rising" ] && value=$((now > before_rising))
  before_rising=$now
}

# The share of time in which the processors were busy since the row before (proc(5): user, nice, system, idle, iowait, irq, softirq, steal).
busy() {
  take "$1"
  # shellcheck disable=SC2086
  set -- $value
  value=
  [ $# -ge 8 ] || return 0
  total=$(($2 + $3 + $4 + $5 + $6 + $7 + $8 + ${9:-0}))
  used=$((total - $5 - $6))
  [ -n "$before_total" ] && percent $((used - before_busy)) $((total - before_total))
  before_total=$total
  before_busy=$used
}

# The share of one core that this script took since the row before, in ticks of 10 ms, `sleep` included.
own() {
  take "$1"
  value=${value##*) }
  # shellcheck disable=SC2086
  set -- $value
  value=
  [ $# -ge 15 ] || return 0
  ticks=$((${12} + ${13} + ${14} + ${15}))
  at=$((whole * 100 + ${part:-0}))
  [ -n "$before_own" ] && percent $((ticks - before_own)) $((at - before_at))
  before_own=$ticks
  before_at=$at
}

# One write for a line, so that it is there whole or not. A disk that is full may take a part of it: then nothing follows.
line() {
  printf '%s\n' "$1" 2>/dev/null >>"$out" && return 0
  echo "$out cannot be written any more (is the disk full?): stopped after $count rows" >&2
  exit 1
}

count=0
trap 'echo "$count rows in $out" >&2; exit 0' INT TERM
line "$head"
newline='
'
while [ "$rows" -eq 0 ] || [ "$count" -lt "$rows" ]; do
  uptime
  hundredths=${part:-0}
  [ "$hundredths" -gt 9 ] || hundredths=0$hundredths
  row=$((epoch + whole - first)).$hundredths
  rest=$files
  while [ -n "$rest" ]; do
    entry=${rest%%"$newline"*}
    rest=${rest#*"$newline"}
    file=${entry#* }
    case ${entry%% *} in
      number) number "$file" ;;
      above)
        number "$file"
        [ -n "$value" ] && value=$((value > 0))
        ;;
      rising) rising "$file" ;;
      busy) busy "$file" ;;
      own) own "$file" ;;
    esac
    row=$row,$value
  done
  line "$row"
  count=$((count + 1))
  [ "$count" -eq "$rows" ] || sleep "$step"
done
echo "$count rows in $out" >&2
