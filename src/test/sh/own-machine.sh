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
    mount --rbind /dev "$root/dev"
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

sh -c 'echo $$ > "$1/cgroup.procs"; exec unshare --cgroup --pid --net --kill-child --fork bash -c "inside $2"' \
    sh "$group" "$folder" &
machine=$!
ended() {
    kill "$machine" 2>/dev/null || true
    wait "$machine" 2>/dev/null || true
    find "$group" -depth -type d -exec rmdir {} \; 2>/dev/null || true
}
trap ended EXIT
trap 'exit 0' TERM INT
wait "$machine"
