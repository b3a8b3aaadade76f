#!/bin/bash
# A machine of its own for the tests of the package: this one's files under a layer that is thrown away, its own processes,
# network (nothing but loopback) and systemd. As root: own-machine.sh FOLDER. It runs until it is told to end.
set -eu
folder=$1
mount -t tmpfs none "$folder"
mkdir "$folder/upper" "$folder/work" "$folder/root" "$folder/groups"
mount -t overlay overlay -o "lowerdir=/,upperdir=$folder/upper,workdir=$folder/work" "$folder/root"
mount -t cgroup2 none "$folder/groups"
group=$folder/groups/own-machine-$$
mkdir "$group"

inside() {
    set -eu
    root=$1/root
    mount -t proc proc "$root/proc"
    # Devices of its own: those any program wants, a serial line as udev would hand it out, and one that anybody may open,
    # so that only a unit's own rules stand before it.
    mount -t tmpfs -o mode=755 none "$root/dev"
    mkdir "$root/dev/pts" "$root/dev/shm"
    mount -t devpts -o newinstance,ptmxmode=666 none "$root/dev/pts"
    mount -t tmpfs -o mode=1777 none "$root/dev/shm"
    ln -s pts/ptmx "$root/dev/ptmx"
    ln -s /proc/self/fd "$root/dev/fd"
    for device in 'null 1 3' 'zero 1 5' 'full 1 7' 'random 1 8' 'urandom 1 9' 'tty 5 0' 'tun 10 200'; do
        mknod -m 666 "$root/dev/"${device%% *} c ${device#* }
    done
    mknod -m 660 "$root/dev/ttyS0" c 4 64
    chown root:dialout "$root/dev/ttyS0"
    mount -t sysfs sysfs "$root/sys"
    mount -t cgroup2 none "$root/sys/fs/cgroup"
    mount -t tmpfs none "$root/run"
    mount -t tmpfs -o mode=1777 none "$root/tmp"
    ip link set lo up 2>/dev/null || true
    # Of all units only those of the package: the machine's own must not start a second time.
    units=$root/etc/own-units
    mkdir -p "$units"
    for target in sysinit basic shutdown network local-fs default multi-user sockets timers paths slices; do
        printf '[Unit]\nDescription=%s\nDefaultDependencies=no\n' $target > "$units/$target.target"
    done
    for unit in dawnkettle.service dawnkettle-failed@.service; do
        ln -s "/lib/systemd/system/$unit" "$units/$unit"
        mkdir "$units/$unit.d"
        printf '[Service]\nStandardOutput=append:/var/log/own.log\nStandardError=append:/var/log/own.log\n' \
            > "$units/$unit.d/log.conf"
    done
    export container=own-machine SYSTEMD_UNIT_PATH=/etc/own-units
    exec chroot "$root" /lib/systemd/systemd --system --unit=default.target --log-target=console --log-level=notice
}
export -f inside

bash -c 'echo $$ > "$1/cgroup.procs"; exec unshare --cgroup --pid --net --kill-child --fork bash -c "inside $2"' \
    bash "$group" "$folder" &
machine=$!
ended() {
    kill -KILL "$machine" 2>/dev/null || true # it heeds nothing milder; what it holds goes with it
    wait "$machine" 2>/dev/null || true
    for try in 1 2 3 4 5 6 7 8 9 10; do
        find "$group" -depth -type d -exec rmdir {} \; 2>/dev/null || true
        [ -d "$group" ] || break
        sleep 0.2
    done
}
trap ended EXIT
trap 'exit 0' TERM INT
wait "$machine"
