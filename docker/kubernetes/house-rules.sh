#!/bin/sh
# Lays out a house's own rules for the deployment: sh docker/kubernetes/house-rules.sh my-rules house
# Then: kubectl apply --server-side --kustomize house   (by the client alone a large ConfigMap cannot be applied)
#
# The rules become ConfigMaps, one for each folder at the top of the pack, and are mounted together as the folder /rules. Run
# both commands again after a change: the pods get it within about a minute and load it while they run; rules with a fault
# change nothing (GET /v1/rules, last_attempt). Changed folders may arrive one after the other; the rule tests keep half a
# change from going live. A new file replaces the pods. A ConfigMap holds 1 MiB. Never mount one by subPath: such a mount
# does not follow changes.
#
# The routes of authors (reload, trial) want a key of 20 characters or more; without this secret they are off:
# kubectl create secret generic whybake-author --from-literal=key=...
set -eu
rules=$1
out=$2
deployment=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$out/base" "$out/rules"
cp "$deployment"/*.yaml "$out/base/"
files=$(cd "$rules" && find . \( -name '*.rhai' -o -path '*/cases/*.json' \) -not -path '*/.*/*' | sed 's|^\./||' | sort)

maps= sources= added=
# Files at the top first, then folder by folder.
for path in $(echo "$files" | grep -v /) $(echo "$files" | grep /); do
    case $path in
        */*) map=whybake-rules-$(echo "${path%%/*}" | tr '[:upper:]_.' '[:lower:]--') ;;
        *) map=whybake-rules ;;
    esac
    if [ "$map" != "$added" ]; then
        added=$map bytes=0
        # The same name after every change, so that running pods get it and are not replaced.
        maps="$maps
  - name: $map
    options: { disableNameSuffixHash: true }
    files:"
        sources="$sources
                    - configMap:
                        name: $map
                        items:"
    fi
    bytes=$((bytes + $(wc -c < "$rules/$path")))
    if [ "$bytes" -gt 1000000 ]; then
        echo "$map: more than a ConfigMap holds; give some of its files a folder of their own at the top" >&2
        exit 1
    fi
    # A key of a ConfigMap has no slash.
    key=$(echo "$path" | sed 's|/|--|g')
    cp "$rules/$path" "$out/rules/$key"
    maps="$maps
      - $key=rules/$key"
    sources="$sources
                          - { key: \"$key\", path: \"$path\" }"
done

cat > "$out/kustomization.yaml" <<END
apiVersion: kustomize.config.k8s.io/v1beta1
kind: Kustomization
resources: [base]
configMapGenerator:$maps
patches:
  - patch: |
      apiVersion: apps/v1
      kind: Deployment
      metadata:
        name: whybake
      spec:
        template:
          spec:
            containers:
              - name: whybake
                env:
                  - { name: WHYBAKE_RULES_DIR, value: /rules }
                  - name: WHYBAKE_RULES_AUTHOR_KEY
                    valueFrom:
                      secretKeyRef: { name: whybake-author, key: key, optional: true }
                volumeMounts:
                  - { name: rules, mountPath: /rules, readOnly: true }
            volumes:
              - name: rules
                projected:
                  sources:$sources
END
