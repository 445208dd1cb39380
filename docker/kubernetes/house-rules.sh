#!/bin/sh
# Lays out a house's own rules for the deployment: sh docker/kubernetes/house-rules.sh my-rules house
# Then: kubectl apply --server-side --kustomize house   (by the client alone a large ConfigMap cannot be applied)
#
# The rules become a ConfigMap that is mounted as the folder /rules. Run both commands again after a change: the pods get
# it within about a minute and load it while they run; rules with a fault change nothing (GET /v1/rules, last_attempt).
# A ConfigMap holds 1 MiB; a larger pack needs another volume that is mounted at /rules. Never mount it by subPath: such a
# mount does not follow changes.
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

# A key of a ConfigMap has no slash: each file goes by a number, and is mounted at its path.
number=0
keys= items=
for path in $files; do
    number=$((number + 1))
    cp "$rules/$path" "$out/rules/$number"
    keys="$keys
      - file-$number=rules/$number"
    items="$items
                  - { key: file-$number, path: \"$path\" }"
done

cat > "$out/kustomization.yaml" <<END
apiVersion: kustomize.config.k8s.io/v1beta1
kind: Kustomization
resources: [base]
configMapGenerator:
  - name: whybake-rules
    # The same name after every change, so that running pods get it and are not replaced.
    options: { disableNameSuffixHash: true }
    files:$keys
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
                configMap:
                  name: whybake-rules
                  items:$items
END
