import { lotsCount, plants } from './words.ts';

export const sheets = {
  day: 'Día', note: 'Nota', fold: 'Nota y más', units: 'Cuántas', all: 'Todas', allHint: (count: number) => `Vacío: todas, las ${count}.`,
  fromPlace: 'De qué lugar', toPlace: 'Poner en', container: 'Recipiente', readyOn: 'Se espera lista', readyHint: 'Si lo deja vacío, no estarán listas hasta que revise el cepellón.', cause: 'Por qué',
  everywhere: (count: number) => `En todos (${count})`, noPlaces: 'Aún no hay un lugar así. Añádalo antes en Lugares.', closedPlace: (code: string) => `${code} (cerrado)`, unitsAt: (code: string, units: number) => `${code} (${units})`,
  undone: 'Revertido. Todo está como antes.', open: (code: string) => `Abrir ${code}`,
  noWindow: (code: string) => `${code}: ya no queda época de plantación antes de su límite.`,

  potUpTitle: 'Trasplantar', potUpSave: 'Trasplantar', potUpSaved: (count: number, code: string) => `${plants(count)} trasplantadas a ${code}.`,
  keepsClock: (on: string) => `Una maceta mayor no mueve el día de plantar: el límite del ${on} cuenta desde que se confinaron las raíces.`,
  moveTitle: 'Mover', moveTo: 'A', moveSave: 'Mover', moveSaved: (code: string) => `${code} movido. Su etiqueta queda.`,
  loseTitle: 'Perdidas', loseSave: 'Dar de baja', loseSaved: (count: number, code: string) => `${plants(count)} de ${code} dadas de baja.`,
  dormantAsk: '¿Dormida o muerta?',
  dormantText: (plant: string, until: string) => `${plant} quizá solo duerme: las últimas brotan hasta el ${until}. Saque una y mire: las raíces firmes y claras viven.`,
  dormantTextOpen: (plant: string) => `${plant} quizá solo duerme en esta época. Saque una y mire: las raíces firmes y claras viven.`,
  dormantConfirm: 'He mirado: están muertas', dormantWait: 'Esperar',
  countTitle: 'Contar', counted: 'Lo que hay', countHow: '¿Qué tan seguro?', countSave: 'Guardar el conteo', countExpected: (count: number) => `Se esperaban ${count}. La diferencia se anota como hallada o sin explicar.`,
  countSaved: (count: number, code: string) => `${code}: ${count} contadas.`,
  observeTitle: 'Lo que ve', observeKind: 'Qué', rootResult: 'Saque una: ¿aguanta el cepellón?', pest: 'Qué plaga o enfermedad', height: 'Altura', thinned: 'Plantas quitadas',
  circlingHint: 'Una maceta mayor o el suelo: separe las raíces que dan vueltas; una pivotante cortada no vuelve.', observeSave: 'Guardar', observeSaved: 'Anotado.',
  convertTitle: 'Dividir o agrupar', convertHow: 'Qué se hace', divide: 'Dividir: de una salen varias', clump: 'Agrupar: varias en una maceta', plantsIn: 'Plantas usadas', potsOut: 'Macetas hechas',
  convertSave: 'Guardar ambos conteos', convertSaved: (before: number, after: number, code: string) => `${before} dieron ${after} en ${code}.`,
  knives: 'Limpie y desinfecte las hojas entre lotes; corte lejos de la mano. Algunas savias lechosas dañan piel y ojos: use guantes.',
  patchTitle: 'Rellenar huecos', patchFrom: 'De qué otro lote', patchFromHint: 'Solo lotes de la misma planta y procedencia: lo entregado debe poder rastrearse.', patchUnits: 'Plantas puestas',
  patchAfter: (count: number) => `La bandeja tendrá entonces ${plants(count)} con una etiqueta nueva; vale la fecha límite de las más viejas.`, patchSave: 'Rellenar los huecos', patchSaved: (added: number, count: number, code: string) => `${added} puestas: ahora son ${code}, ${plants(count)}. Etiquételas.`,
  splitTitle: 'Separar una parte', splitSave: 'Separar', splitSaved: (count: number, code: string) => `${plants(count)} son ahora ${code}. Etiquételas.`,
  sellTitle: 'Vender', giveTitle: 'Regalar', party: 'A quién', sellSave: 'Vendidas', giveSave: 'Regaladas', leftSaved: (count: number, code: string) => `${plants(count)} de ${code} han salido.`,
  promisedWarning: (free: number) => `Solo ${free} están libres. Pueden salir más: ceden las promesas, la última primero.`,
  holdTitle: 'Retener', holdReason: 'Por qué motivo', holdHint: 'Se retiene un lote entero. Para retener solo una parte, sepárela antes.', holdSave: 'Retener', holdSaved: (count: number) => `${lotsCount(count)} en retención.`,
  releaseTitle: 'Liberar', releaseReason: 'Por qué puede salir', releaseHint: 'Quien pregunte el año que viene leerá esto.', releaseSave: 'Liberar', releaseSaved: (code: string) => `${code} queda liberado.`,
  reIdentifyTitle: 'Es otra planta', reIdentifyPlant: 'Lo que es en realidad', reIdentifyHint: 'Todo lo que vino de este lote cambia de nombre con él. Las promesas del nombre viejo quedan libres.',
  reIdentifySave: 'Cambiar el nombre', reIdentifySaved: (count: number) => `${lotsCount(count)} con otro nombre. Las etiquetas conservan su código.`, gardensTitle: 'Ya plantadas con el nombre equivocado',
  gardenLine: (client: string, site: string, units: number, on: string) => `${client}${site ? `, ${site}` : ''}: ${plants(units)}, la última vez el ${on}`, unknownGarden: 'sin pedido', done: 'Hecho',
  bedTitle: 'Plantar en un bancal', bed: 'Bancal', bedSave: 'Plantar en el bancal', bedSaved: (count: number, code: string) => `${plants(count)} están en el suelo como ${code}.`,
  liftTitle: 'Arrancar del bancal', dug: 'Plantas arrancadas', potsFilled: 'Macetas llenas', liftHint: 'Si son más de lo estimado, lo demás se anota como hallado.', liftSave: 'Arrancar y poner en maceta',
  liftSaved: (count: number, code: string) => `${plants(count)} arrancadas a ${code}.`, digging: 'Antes de cavar, averigüe por dónde van cables y tuberías.',
};

export const treat = {
  title: 'Anotar un tratamiento', product: 'Producto', registrationNo: 'Número de registro', rate: 'Dosis', applicator: 'Aplicado por', applicatorHint: 'Con el número de licencia donde haga falta.',
  target: 'Contra', treatedOn: 'Día', treatedAt: 'Hora', reentryHours: 'Reentrada tras', hours: 'horas', reentryHint: 'Lo que dice la etiqueta. Los lugares quedan cerrados hasta entonces.', save: 'Guardar el tratamiento',
  saved: (count: number, closedUntil: string | null) => `Tratamiento de ${lotsCount(count)} guardado.${closedUntil ? ` Cerrado hasta ${closedUntil}.` : ''}`,
  held: (codes: string) => `Plantas de larvas, ahora retenidas: ${codes}.`,
};

export const bulk = {
  move: 'Mover', lose: 'Perdidas', treat: 'Tratar', hold: 'Retener', observe: 'Observar', merge: 'Juntar',
  of: (count: number) => lotsCount(count), wholePlace: 'todo lo que hay aquí',
  moveTitle: (what: string) => `Mover ${what}`, moveSaved: (count: number) => `${plants(count)} movidas.`,
  loseTitle: (what: string) => `Perdidas de ${what}`, each: 'Tantas de cada uno', percent: 'Una parte de cada uno', unitsEach: 'De cada lote', percentOf: 'Por ciento', loseSaved: (count: number) => `${plants(count)} dadas de baja.`,
  mergeTitle: (what: string) => `Juntar ${what}`, mergeHint: 'Solo lotes de una planta, procedencia y recipiente. En el nuevo mandan los días más tempranos.', mergePlace: 'Llevar todo a', mergeStay: 'Cada uno queda donde está',
  mergeSave: 'Juntar', mergeSaved: (code: string) => `Juntados en ${code}. Etiquételos.`,
};
