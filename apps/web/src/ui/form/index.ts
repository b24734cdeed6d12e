export { FieldGroup, Form, FormActions, type FormProps } from './form.tsx';
